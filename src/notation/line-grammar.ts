import { EmbeddedActionsParser, type IToken, type ParserMethod, type TokenType } from 'chevrotain';
import { fitted } from '../text/fitted.ts';
import { fold } from '../text/fold.ts';
import {
  Chain,
  Comma,
  Comment,
  Count,
  Dash,
  DateShape,
  Dotted,
  Doubt,
  Equal,
  Fraction,
  MonthShape,
  OpenQuote,
  Pair,
  Percent,
  Plus,
  Quoted,
  Slash,
  Slashed,
  Stop,
  Tilde,
  TOKENS,
  Unknown,
  Whole,
  Word,
} from './lexer.ts';
import type { Item, ItemKind, LineTree, Run } from './line-tree.ts';
import { UNIT_WORDS } from './words.ts';

const endOf = (token: IToken): number => token.startOffset + token.image.length;
const runOf = (token: IToken): Run => ({ from: token.startOffset, to: endOf(token) });
const itemOf = (kind: ItemKind, token: IToken, glued: boolean): Item => ({
  kind,
  from: token.startOffset,
  to: endOf(token),
  glued,
});
const NUMBERS: ReadonlySet<TokenType> = new Set([Whole, Dotted, Fraction]);
const KINDS: ReadonlyMap<TokenType, ItemKind> = new Map<TokenType, ItemKind>([
  [Slashed, 'slashed'],
  [Chain, 'chain'],
  [DateShape, 'date'],
  [MonthShape, 'month'],
  [Count, 'count'],
  [Quoted, 'text'],
  [OpenQuote, 'open'],
  [Plus, 'plus'],
  [Dash, 'dash'],
  [Comma, 'comma'],
  [Slash, 'slash'],
  [Equal, 'equal'],
  [Percent, 'unknown'],
  [Tilde, 'unknown'],
  [Doubt, 'unknown'],
  [Stop, 'stop'],
  [Unknown, 'unknown'],
]);

type Draft = { -readonly [key in keyof Item]: Item[key] };
type Figure = { token: IToken; second: IToken | undefined; unit: IToken | undefined; secondUnit: IToken | undefined };

/**
 * The grammar of one line after its first word. It is loose on purpose: it never fails and never recovers; what a word
 * may not hold is for that word's binder to say, in trade words. Whether two tokens touch decides between a range
 * (`30-45`) and a minus (`A -20%`), so spans are read here and nowhere else.
 */
class LineGrammar extends EmbeddedActionsParser {
  declare line: ParserMethod<[], LineTree>;
  declare list: ParserMethod<[], LineTree>;
  declare mix: ParserMethod<[], LineTree>;
  declare clockLine: ParserMethod<[], LineTree>;

  constructor(validate: boolean) {
    super(TOKENS, { recoveryEnabled: false, maxLookahead: 1, skipValidations: !validate });

    const touches = (ahead: number): boolean => {
      const before = this.LA(ahead - 1);
      const now = this.LA(ahead);
      // The token before the first is the parser's own end mark, without a place.
      return Number.isFinite(before.startOffset) && before.image !== '' && endOf(before) === now.startOffset;
    };
    const isNumber = (ahead: number): boolean => NUMBERS.has(this.LA(ahead).tokenType);
    const isUnit = (): boolean => this.LA(1).tokenType === Word && UNIT_WORDS.has(fold(this.LA(1).image));
    /** A dash between two figures: glued to both, or with space on both sides; with space before it alone a minus. */
    const isRangeDash = (): boolean =>
      isNumber(2) && touches(1) === touches(2) && (touches(1) || this.LA(3).tokenType !== Percent);
    /** `2.38pm`, `2.38 pm`: neither word can be a name. */
    const isHalfDay = (): boolean => /^[ap]m$/i.test(this.LA(1).image);
    const isMoment = (ahead: number): boolean => {
      const { tokenType, image } = this.LA(ahead);
      if (tokenType === Pair) return true;
      if (tokenType === Dotted) return /^\d{1,2}[.,]\d\d$/.test(image);
      return tokenType === Whole && /^[ap]m$/i.test(this.LA(ahead + 1).image);
    };

    const number = this.RULE('number', (): IToken => {
      return this.OR([
        { ALT: () => this.CONSUME(Whole) },
        { ALT: () => this.CONSUME(Dotted) },
        { ALT: () => this.CONSUME(Fraction) },
      ]);
    });

    /** `~12.5`, `30-45 min`, `22?`, `20%`, `6 mo` */
    const measure = this.RULE('measure', (): Item => {
      const glued = touches(1);
      let about = false;
      let second: IToken | undefined;
      let last = this.LA(1);
      this.OPTION1(() => {
        last = this.CONSUME(Tilde);
        about = true;
      });
      const start = last.tokenType === Tilde ? last : this.LA(1);
      const first = this.SUBRULE1(number);
      last = first;
      this.OPTION2({
        GATE: isRangeDash,
        DEF: () => {
          this.CONSUME(Dash);
          second = this.SUBRULE2(number);
          last = second;
        },
      });
      this.OPTION3({
        GATE: () => touches(1),
        DEF: () => {
          last = this.CONSUME1(Doubt);
          about = true;
        },
      });
      let percent = false;
      let unit: IToken | undefined;
      this.OPTION4({
        GATE: () => this.LA(1).tokenType === Percent || isUnit(),
        DEF: () =>
          this.OR1([
            {
              ALT: () => {
                last = this.CONSUME(Percent);
                percent = true;
              },
            },
            {
              GATE: isUnit,
              ALT: () => {
                unit = this.CONSUME(Word);
                last = unit;
              },
            },
          ]),
      });
      this.OPTION5({
        GATE: () => touches(1),
        DEF: () => {
          last = this.CONSUME2(Doubt);
          about = true;
        },
      });
      return this.ACTION((): Item => {
        const item: Draft = { kind: 'number', from: start.startOffset, to: endOf(last), glued, first: runOf(first) };
        if (second !== undefined) item.second = runOf(second);
        if (unit !== undefined) item.unit = runOf(unit);
        if (percent) item.percent = true;
        if (about) item.about = true;
        return item;
      });
    });

    const timed = (kind: ItemKind, glued: boolean, start: number, figure: Figure): Item => {
      const { token, second, unit, secondUnit } = figure;
      const item: Draft = {
        kind,
        from: start,
        to: endOf(secondUnit ?? second ?? unit ?? token),
        glued,
        first: runOf(token),
      };
      if (second !== undefined) item.second = runOf(second);
      if (unit !== undefined) item.unit = runOf(unit);
      if (secondUnit !== undefined) item.secondUnit = runOf(secondUnit);
      return item;
    };

    /** `1:1.5`, `1:1.5-1:2`, `1:1.5-2`, `14:35 - 14:55`, `2:38pm` */
    const pair = this.RULE('pair', (): Item => {
      const glued = touches(1);
      let about = false;
      let start = this.LA(1).startOffset;
      this.OPTION1(() => {
        start = this.CONSUME(Tilde).startOffset;
        about = true;
      });
      const figure: Figure = { token: this.CONSUME1(Pair), second: undefined, unit: undefined, secondUnit: undefined };
      this.OPTION2({
        GATE: isHalfDay,
        DEF: () => {
          figure.unit = this.CONSUME1(Word);
        },
      });
      this.OPTION3({
        GATE: () => this.LA(2).tokenType === Pair || (touches(1) && touches(2) && isNumber(2)),
        DEF: () => {
          this.CONSUME(Dash);
          figure.second = this.OR([{ ALT: () => this.CONSUME2(Pair) }, { ALT: () => this.SUBRULE(number) }]);
        },
      });
      this.OPTION4({
        GATE: () => figure.second !== undefined && isHalfDay(),
        DEF: () => {
          figure.secondUnit = this.CONSUME2(Word);
        },
      });
      let doubt: IToken | undefined;
      this.OPTION5({
        GATE: () => touches(1),
        DEF: () => {
          doubt = this.CONSUME(Doubt);
        },
      });
      return this.ACTION((): Item => {
        const item = timed('pair', glued, start, figure);
        if (doubt !== undefined) return { ...item, to: endOf(doubt), about: true };
        return about ? { ...item, about } : item;
      });
    });

    const moment = this.RULE('moment', (): IToken => {
      return this.OR([
        { ALT: () => this.CONSUME(Pair) },
        { ALT: () => this.CONSUME(Dotted) },
        { ALT: () => this.CONSUME(Whole) },
      ]);
    });

    /** `14:35`, `14.35-14.55`, `2.38pm`, `~14:35` */
    const period = this.RULE('period', (): Item => {
      const glued = touches(1);
      let start = this.LA(1).startOffset;
      let about = false;
      this.OPTION1(() => {
        start = this.CONSUME(Tilde).startOffset;
        about = true;
      });
      const figure: Figure = {
        token: this.SUBRULE1(moment),
        second: undefined,
        unit: undefined,
        secondUnit: undefined,
      };
      this.OPTION2({
        GATE: isHalfDay,
        DEF: () => {
          figure.unit = this.CONSUME1(Word);
        },
      });
      this.OPTION3({
        GATE: () => isMoment(2),
        DEF: () => {
          this.CONSUME(Dash);
          figure.second = this.SUBRULE2(moment);
        },
      });
      this.OPTION4({
        GATE: () => figure.second !== undefined && isHalfDay(),
        DEF: () => {
          figure.secondUnit = this.CONSUME2(Word);
        },
      });
      let doubt: IToken | undefined;
      this.OPTION5({
        GATE: () => touches(1),
        DEF: () => {
          doubt = this.CONSUME(Doubt);
        },
      });
      return this.ACTION((): Item => {
        const item = timed('clock', glued, start, figure);
        if (doubt !== undefined) return { ...item, to: endOf(doubt), about: true };
        return about ? { ...item, about } : item;
      });
    });

    /** `+25`, `+ 25 min`, `+1h` */
    const relative = this.RULE('relative', (): Item => {
      const glued = touches(1);
      const plus = this.CONSUME(Plus);
      const first = this.CONSUME(Whole);
      let unit: IToken | undefined;
      this.OPTION({
        GATE: () => /^min(s|utes?)?$/i.test(this.LA(1).image) || (touches(1) && /^h$/i.test(this.LA(1).image)),
        DEF: () => {
          unit = this.CONSUME(Word);
        },
      });
      return this.ACTION((): Item => {
        const item: Draft = {
          kind: 'clock',
          from: plus.startOffset,
          to: endOf(unit ?? first),
          glued,
          first: runOf(first),
          relative: true,
        };
        if (unit !== undefined) item.unit = runOf(unit);
        return item;
      });
    });

    /** A word, hedged or not. */
    const word = this.RULE('word', (): Item => {
      const glued = touches(1);
      let start = this.LA(1).startOffset;
      let about = false;
      this.OPTION1(() => {
        start = this.CONSUME(Tilde).startOffset;
        about = true;
      });
      const token = this.CONSUME(Word);
      let to = this.ACTION(() => endOf(token));
      this.OPTION2({
        GATE: () => touches(1),
        DEF: () => {
          const doubt = this.CONSUME(Doubt);
          about = true;
          to = this.ACTION(() => endOf(doubt));
        },
      });
      return this.ACTION((): Item => {
        const item: Draft = { kind: 'word', from: start, to, glued };
        // A word without a hedge is all of its item.
        if (about) {
          item.first = runOf(token);
          item.about = true;
        }
        return item;
      });
    });

    const sign = this.RULE('sign', (): Item => {
      const glued = touches(1);
      const token = this.OR([
        { ALT: () => this.CONSUME(Slashed) },
        { ALT: () => this.CONSUME(Chain) },
        { ALT: () => this.CONSUME(DateShape) },
        { ALT: () => this.CONSUME(MonthShape) },
        { ALT: () => this.CONSUME(Count) },
        { ALT: () => this.CONSUME(Quoted) },
        { ALT: () => this.CONSUME(OpenQuote) },
        { ALT: () => this.CONSUME(Dash) },
        { ALT: () => this.CONSUME(Slash) },
        { ALT: () => this.CONSUME(Equal) },
        { ALT: () => this.CONSUME(Stop) },
        { ALT: () => this.CONSUME(Percent) },
        { ALT: () => this.CONSUME(Doubt) },
        { ALT: () => this.CONSUME(Unknown) },
      ]);
      return this.ACTION((): Item => itemOf(KINDS.get(token.tokenType) ?? 'unknown', token, glued));
    });
    const tilde = this.RULE('tilde', (): Item => {
      const glued = touches(1);
      const token = this.CONSUME(Tilde);
      return this.ACTION((): Item => itemOf('unknown', token, glued));
    });

    const hedged = (type: 'number' | 'pair' | 'word'): boolean => {
      const ahead = this.LA(1).tokenType === Tilde ? 2 : 1;
      const { tokenType } = this.LA(ahead);
      return type === 'number' ? NUMBERS.has(tokenType) : tokenType === (type === 'pair' ? Pair : Word);
    };
    /** One thing on the line. Only a hedge sign needs a second look ahead; the gates give it. */
    const item = this.RULE('item', (): Item => {
      return this.OR({
        DEF: [
          { GATE: () => hedged('number'), ALT: () => this.SUBRULE(measure) },
          { GATE: () => hedged('pair'), ALT: () => this.SUBRULE(pair) },
          { GATE: () => hedged('word'), ALT: () => this.SUBRULE(word) },
          { ALT: () => this.SUBRULE(sign) },
          { ALT: () => this.SUBRULE(tilde) },
        ],
        IGNORE_AMBIGUITIES: true,
      });
    });
    const comma = this.RULE('comma', (): Item => {
      const glued = touches(1);
      const token = this.CONSUME(Comma);
      return this.ACTION((): Item => itemOf('comma', token, glued));
    });
    const plus = this.RULE('plus', (): Item => {
      const glued = touches(1);
      const token = this.CONSUME(Plus);
      return this.ACTION((): Item => itemOf('plus', token, glued));
    });
    const comment = this.RULE('comment', (): Run | undefined => {
      let run: Run | undefined;
      this.OPTION(() => {
        const token = this.CONSUME(Comment);
        run = this.ACTION(() => runOf(token));
      });
      return run;
    });

    /** A header, or a line whose order its own word knows. */
    this.line = this.RULE('line', (): LineTree => {
      const group: Item[] = [];
      this.MANY(() => {
        group.push(
          this.OR([
            { ALT: () => this.SUBRULE(item) },
            { ALT: () => this.SUBRULE(comma) },
            { ALT: () => this.SUBRULE(plus) },
          ]),
        );
      });
      return { groups: [fitted(group)], comment: this.SUBRULE(comment) };
    });

    /** Items in groups parted by commas. */
    this.list = this.RULE('list', (): LineTree => {
      const groups: Item[][] = [[]];
      this.MANY(() => {
        this.OR([
          { ALT: () => this.push(groups, this.SUBRULE(item)) },
          { ALT: () => this.push(groups, this.SUBRULE(plus)) },
          {
            ALT: () => {
              this.SUBRULE(comma);
              groups.push([]);
            },
          },
        ]);
      });
      return { groups, comment: this.SUBRULE(comment) };
    });

    /** Components joined by plus signs, or by commas where a hand writes those. */
    this.mix = this.RULE('mix', (): LineTree => {
      const groups: Item[][] = [[]];
      this.MANY(() => {
        this.OR1([
          { ALT: () => this.push(groups, this.SUBRULE(item)) },
          {
            ALT: () => {
              this.OR2([{ ALT: () => this.SUBRULE(plus) }, { ALT: () => this.SUBRULE(comma) }]);
              groups.push([]);
            },
          },
        ]);
      });
      return { groups, comment: this.SUBRULE(comment) };
    });

    /** A time or a span of time first, where one stands; then a list. */
    this.clockLine = this.RULE('clockLine', (): LineTree => {
      const head: Item[] = [];
      this.OPTION({
        GATE: () =>
          (this.LA(1).tokenType === Plus && this.LA(2).tokenType === Whole) ||
          isMoment(this.LA(1).tokenType === Tilde ? 2 : 1),
        DEF: () => {
          head.push(this.OR([{ ALT: () => this.SUBRULE(relative) }, { ALT: () => this.SUBRULE(period) }]));
        },
      });
      const rest = this.SUBRULE(this.list);
      return this.ACTION((): LineTree => {
        const [first = [], ...more] = rest.groups;
        return { groups: [[...head, ...first], ...more], comment: rest.comment };
      });
    });

    this.performSelfAnalysis();
  }

  private push(groups: Item[][], item: Item): void {
    groups.at(-1)?.push(item);
  }
}

/** The rules that a line can be read by. */
export type LineRule = 'line' | 'list' | 'mix' | 'clockLine';

/** The grammar, built once when first asked for. `validate` runs the parser generator’s own checks, for tests. */
export const makeGrammar = (validate = false): LineGrammar => new LineGrammar(validate);

let grammar: LineGrammar | undefined;

/** Reads the tokens that follow a line’s first word. Never fails: what cannot be told apart is an `unknown` item. */
export const treeOf = (tokens: IToken[], rule: LineRule): LineTree => {
  grammar ??= makeGrammar();
  grammar.input = tokens;
  const tree = grammar[rule]();
  const [error] = grammar.errors;
  if (error !== undefined)
    throw new Error(`the line grammar has a hole at ${error.token.startOffset}: ${error.message}`);
  return tree;
};
