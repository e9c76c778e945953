import type { In } from '../../records/schema/shelf.ts';
import { nearNames } from '../../text/near.ts';
import { isLot, type LotMove, type LotUse, lotsOf, lotUses } from '../lots.ts';
import { defineRule, type Found, foundEach } from '../rule.ts';

const found = (use: LotUse, own: readonly LotMove<In>[], other: LotMove<In> | undefined): Found => {
  const near = nearNames(
    use.lot,
    own.map(({ typed }) => typed),
  );
  const [first] = near;
  const place = use.place;
  return {
    place,
    message:
      other === undefined
        ? `No lot ${use.lot.toUpperCase()} of ${use.product} came in.`
        : `Lot ${other.typed} came in as ${other.product}, and the bowl has it as ${use.product}.`,
    todo:
      first === undefined
        ? `Correct the lot, or write the line it came in by: \`in ${use.product} … lot ${use.lot.toUpperCase()}\`.`
        : `Write \`${near.join('` or `')}\`, or the line it came in by.`,
    ...(first !== undefined && {
      label: `near: ${first}`,
      mend: { title: `write ${first}`, edits: [{ place, put: first }], sure: 'likely' },
    }),
  };
};

export default defineRule({
  name: 'lot-unknown',
  family: 'shelf',
  severity: 'mind',
  bears: 'never',
  over: 'visit',
  what: 'A lot is used that never came in, of a product whose lots are noted when they come in.',
  why: 'If a lot is called back, whoever had it is found by its number.',
  source: { kind: 'notation' },
  check: ({ visit }, { journal }) =>
    foundEach(lotUses(visit, journal), (use) => {
      const { ins } = lotsOf(journal);
      const own = ins.filter(({ product }) => product === use.product);
      if (own.length === 0 || own.some((move) => isLot(use, move))) return undefined;
      return found(
        use,
        own,
        ins.find(({ lot }) => lot === use.lot),
      );
    }),
  bad: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    stock 2026-01-05
      in neon teal 200 g lot N118
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal lot N181
                              ^^^^`,
  good: `
    range neon "Kelp direct" semi
      mix none
      shades teal
    stock 2026-01-05
      in neon teal 200 g lot N118
    client wren-abbott "Wren Abbott"
    visit 2026-09-04 wren-abbott
      bowl A 30 neon teal lot N118`,
});
