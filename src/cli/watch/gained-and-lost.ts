import { type Finding, SEVERITIES } from '../../text/finding.ts';

/** Findings that a change brought, and those it took. */
export type Difference = { readonly gained: readonly Finding[]; readonly lost: readonly Finding[] };

/** What makes two findings the same one: their key, whatever their line and sentence; one that grew graver is another. */
const keyOf = ({ key, severity }: Finding): string => `${severity}\n${key}`;

const less = (some: readonly Finding[], others: readonly Finding[]): Finding[] => {
  const counts = new Map<string, number>();
  for (const other of others) counts.set(keyOf(other), (counts.get(keyOf(other)) ?? 0) + 1);
  return some.filter((one) => {
    const left = counts.get(keyOf(one)) ?? 0;
    counts.set(keyOf(one), left - 1);
    return left <= 0;
  });
};

const without = (some: readonly Finding[], others: readonly Finding[]): Finding[] => {
  const known = new Set(others);
  return some.filter((one) => !known.has(one));
};

/** What `now` has that `before` had not, and the other way round. */
export const gainedAndLost = (before: readonly Finding[], now: readonly Finding[]): Difference => {
  // In notes that did not change findings are the very same, and those are nearly all of a large journal.
  const [old, fresh] = [without(before, now), without(now, before)];
  return { gained: less(fresh, old), lost: less(old, fresh) };
};

const bySeverity = (findings: readonly Finding[]): string =>
  SEVERITIES.flatMap((severity) => {
    const count = findings.filter((one) => one.severity === severity).length;
    return count === 0 ? [] : [`${count} ${severity}`];
  }).join(', ');

/** `gained 1 stop; lost 2 mind`. */
export const differenceText = ({ gained, lost }: Difference): string => {
  if (gained.length + lost.length === 0) return 'findings as before';
  return [
    ...(gained.length > 0 ? [`gained ${bySeverity(gained)}`] : []),
    ...(lost.length > 0 ? [`lost ${bySeverity(lost)}`] : []),
  ].join('; ');
};
