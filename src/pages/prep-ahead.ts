import type { Finding } from '../text/finding.ts';
import { findingAhead } from './finding-lines.ts';
import { type HeadView, listOf } from './head-view.ts';
import { AHEAD_HEADING } from './headings.ts';
import { skinTestAlert } from './skin-tests.ts';

/** What would be a finding once the visit is noted, said before anything is mixed. */

/** Skin tests that do not hold stand among the alerts already, product by product. */
const TESTS = /^skin-test-(?:missing|unread|unclear|too-soon|expired)$/;

/** The findings that the sheet says before mixing. `ahead` are those on the visit as it is noted or planned. */
export const aheadOf = (view: HeadView, ahead: readonly Finding[]): readonly Finding[] => {
  const isTested = skinTestAlert(view).length > 0;
  return ahead.filter((finding) => !(isTested && TESTS.test(finding.rule)));
};

/** The findings of a visit as blocks of Markdown with their heading, but for a `stop`, which stands among the alerts. */
export const aheadBlocks = (ahead: readonly Finding[], planned: boolean): string[] => {
  const shown = ahead.filter(({ severity }) => severity !== 'stop');
  if (shown.length === 0) return [];
  const how = planned
    ? 'Of the visit as it is planned below, judged as if it were noted:'
    : 'Of the visit as it is noted:';
  return [`## ${AHEAD_HEADING}`, how, ...listOf(shown.map(findingAhead))];
};
