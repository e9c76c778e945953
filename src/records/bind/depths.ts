import type { Item } from '../../notation/line-tree.ts';
import { DEPTHS } from '../../trade/depth.ts';
import type { Depth } from '../schema/values.ts';
import { atOf, type Cursor, notice, peek, take, typed } from './cursor.ts';
import { bounds, figure, hedge } from './figures.ts';

const DARKEST = DEPTHS[0];
const LIGHTEST = DEPTHS.at(-1) ?? DARKEST;

/** What is no depth although a depth belongs here: a figure past the scale, or a shade. Reported, and not kept. */
const depthFault = (cursor: Cursor, item: Item, { value, to = value }: Omit<Depth, 'at'>): boolean => {
  const text = typed(cursor, item);
  if (Math.max(value, to) > LIGHTEST || Math.min(value, to) < DARKEST || (value * 4) % 1 !== 0) {
    const shade = /^\d{1,2}[.,/]\d+$/.test(text);
    notice(
      cursor,
      'two-readings',
      item,
      `\`${text}\` is no depth; depths run from ${DARKEST} to ${LIGHTEST} by halves.`,
      {
        todo: shade
          ? `Write depth and tone, as in \`${Math.floor(value)} ash\`.`
          : `Write \`${text}%\` for a share of grey, or a depth.`,
        label: shade ? 'depth or shade' : 'depth or share',
      },
    );
    return true;
  }
  return false;
};

/** `5/6` is a span of depths; `8/1` and `7/43` look like shades and are asked about. */
const slashedDepth = (cursor: Cursor, item: Item): Depth | undefined => {
  const [value = 0, to = 0] = typed(cursor, item).split('/').map(figure);
  if (Math.abs(to - value) <= 2 && to >= DARKEST) return { value, to, at: atOf(item) };
  const text = typed(cursor, item);
  notice(cursor, 'two-readings', item, `\`${text}\` reads as depths ${value} to ${to}, or as a shade.`, {
    todo: `Write depth and tone, as in \`${Math.floor(value)} ash\`${to < DARKEST || to > LIGHTEST ? '' : `, or \`${value}-${to}\` for the span`}.`,
    label: 'depths or shade',
  });
  return undefined;
};

/** Takes a depth: `6`, `6½`, `9-10`, `7+`, `5/6`. Undefined where none stands, or, with a notice, where it is none. */
export const takeDepth = (cursor: Cursor): Depth | undefined => {
  const item = peek(cursor);
  if (item?.kind === 'slashed') {
    if (!/^\d{1,2}([.,]\d)?\/\d{1,2}([.,]\d)?$/.test(typed(cursor, item))) return undefined;
    take(cursor);
    return slashedDepth(cursor, item);
  }
  if (item?.kind !== 'number' || item.percent || item.unit) return undefined;
  const range = bounds(cursor, item);
  take(cursor);
  if (range === undefined || depthFault(cursor, item, range)) return undefined;
  const after = peek(cursor);
  if (after?.kind === 'plus' && after.glued) {
    take(cursor);
    return { ...range, plus: true, ...hedge(item), at: atOf({ from: item.from, to: after.to }) };
  }
  const { value, to } = range;
  return to === undefined && !item.about
    ? { value, at: atOf(item) }
    : { value, ...(to !== undefined && { to }), ...hedge(item), at: atOf(item) };
};
