import type { Placing } from '../records/schema/visit.ts';

/** The sections of a `place` line, both sides of a mirrored one; undefined where they are not counted. */
export const sectionsOf = ({ sections, mirror }: Pick<Placing, 'sections' | 'mirror'>): number | undefined =>
  sections === undefined ? undefined : sections * (mirror ? 2 : 1);
