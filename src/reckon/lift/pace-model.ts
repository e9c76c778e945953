import { grouped, mean } from './grouped.ts';
import { courseAt, fitPace, type PaceFit, type Part, partsSay, type Row } from './pace-fit.ts';
import { USUAL, variancesOf } from './pace-variance.ts';
import { type Reading, stageKey } from './reading.ts';

/**
 * How long a lightener takes in a salon: the logarithm of the minutes to a depth is a course common to all, and a part
 * each for the head, the head at that stage, the strength, the place and heat, each shrunk towards nought when there is
 * little to go on: a head's pace towards the salon's, a strength's towards the product's at any.
 *
 * The method is ours, put together from standard pieces: penalised least squares by backfitting, the course by monotone
 * regression, and the heads' penalty by the ratio of two variances, as in an empirical Bayes estimate of a normal mean.
 */
export type PaceModel = PaceFit & {
  readonly noise: number;
  /** Visits before a head's own pace counts as much as the salon's: noise over the spread between heads. */
  readonly patience: number;
  /** Visits by client, and of all. */
  readonly visits: ReadonlyMap<string, number>;
  readonly visitCount: number;
};

/**
 * What a head shows at one stage counts as much as her pace as a whole after about two visits: a visit shares its weight
 * among some four stages. A choice, no source.
 */
const STAGE_PATIENCE = 0.5;

/** Visits before a strength, a place or heat counts as much as the product as a whole. A choice, no source. */
const PART_PATIENCE = 4;

/** Every visit counts one, shared between its readings. */
const rowsOf = (visits: readonly (readonly Reading[])[]): Row[] =>
  visits.flatMap((own) =>
    own.map((reading) => ({ ...reading, log: Math.log(reading.minutes), weight: 1 / own.length })),
  );

/** What is left of every place of every visit when all but the head's own pace is told. */
const leftOfHeads = ({ parts, rest }: PaceFit): { client: string; left: number }[] =>
  [...grouped(rest, ({ row }) => row.client)].flatMap(([client, own]) =>
    [...grouped(own, ({ row }) => `${row.date} ${row.zone}`).values()].map((place) => ({
      client,
      left: mean(place.map(({ row, left }) => left + partsSay(parts, row) - partsSay(parts, row, 'client'))),
    })),
  );

/** The model of one product's readings in a salon; undefined without any. */
export const modelPace = (readings: readonly Reading[]): PaceModel | undefined => {
  if (readings.length === 0) return undefined;
  const heads = [...grouped(readings, ({ client }) => client)].map(([client, own]) => ({
    client,
    visits: [...grouped(own, ({ date }) => date).values()],
  }));
  const rows = rowsOf(heads.flatMap(({ visits }) => visits));
  const fitWith = (patience: number): PaceFit =>
    fitPace(rows, {
      client: patience,
      stage: STAGE_PATIENCE,
      strength: PART_PATIENCE,
      zone: PART_PATIENCE,
      heated: PART_PATIENCE,
    });
  // What a first fit with the usual variances leaves tells the variances; fitting a third time would hardly move them.
  const { noise, spread } = variancesOf(leftOfHeads(fitWith(USUAL.noise / USUAL.spread)));
  const patience = noise / spread;
  const visits = new Map(heads.map((head) => [head.client, head.visits.length]));
  return {
    ...fitWith(patience),
    noise,
    patience,
    visits,
    visitCount: heads.reduce((sum, head) => sum + head.visits.length, 0),
  };
};

/** A head, a strength and heat, and the places asked about; without one, the whole of a bowl. */
export type Asked = Readonly<Record<Exclude<Part, 'zone' | 'stage'>, string>> & { readonly zones: readonly string[] };

/** Minutes, and the span meant to hold eight visits of ten. */
export type Estimate = { readonly minutes: number; readonly low: number; readonly high: number };

/** Standard deviations either way that hold eight of ten normal values: tables of the normal distribution. */
const EIGHT_OF_TEN = 1.2816;

/**
 * Minutes to a depth as the model has them. The span takes in the noise, what is not known of the head, and what is not
 * known of the salon. Undefined for a depth that the readings do not reach, or that all had left by the first look.
 */
export const estimateAt = (model: PaceModel, asked: Asked, depth: number): Estimate | undefined => {
  const course = courseAt(model.course, depth);
  if (course === undefined) return undefined;
  const zones = asked.zones.length > 0 ? asked.zones : [''];
  const log =
    course + mean(zones.map((zone) => partsSay(model.parts, { ...asked, zone, stage: stageKey(asked.client, depth) })));
  const own = model.visits.get(asked.client) ?? 0;
  const spread = Math.sqrt(model.noise * (1 + 1 / (own + model.patience) + 1 / model.visitCount));
  const away = Math.exp(EIGHT_OF_TEN * spread);
  return { minutes: Math.exp(log), low: Math.exp(log) / away, high: Math.exp(log) * away };
};
