import { foundEarlier } from '../../pages/alerts.ts';
import { pointsInto } from '../../pages/finding-lines.ts';
import { htmlText } from '../../pages/html-text.ts';
import { type LivePage, type LiveVisit, liveHtml, livePart } from '../../pages/live-page.ts';
import { LIVE_STYLE } from '../../pages/live-style.ts';
import { STYLE } from '../../pages/style.ts';
import { openRuns } from '../../reckon/timing/open-runs.ts';
import { cardFile } from './card-file.ts';
import { visitsOn } from './draw.ts';
import { POLICY } from './guard.ts';
import type { Kept, State } from './keep-current.ts';
import { LIVE_SCRIPT, REFRESH_SCRIPT } from './live-script.ts';
import type { Answer } from './server.ts';
import { stampsFor } from './stamps.ts';

/** Minutes since midnight by the machine's clock, with their part of a minute. */
export const minuteNow = (): number => {
  const now = new Date();
  return now.getHours() * 60 + now.getMinutes() + Math.round(now.getSeconds() / 0.6) / 100;
};

export type LiveOptions = {
  /** Minutes since midnight, with their part of a minute. */
  readonly minute: () => number;
  /** Whether the page stands on a phone at the chair, and can note the clock. */
  readonly share: boolean;
};

const pageOf = ({ settled, on }: State, kept: Kept, { minute, share }: LiveOptions): LivePage => {
  const visits = visitsOn(settled, on).map((visit): LiveVisit => {
    const { name } = visit.client;
    const all = settled.reckonedOf(name);
    return {
      visit,
      open: openRuns(visit, all.slice(0, all.indexOf(visit))),
      card: encodeURI(cardFile(name)),
      alerts: kept.alerts(name),
      stops: settled
        .foundOf(name)
        .filter(
          (one) => one.severity === 'stop' && one.reason === undefined && pointsInto(settled.journal, one, visit.visit),
        )
        .map(({ message }) => message.replaceAll('`', '')),
      earlier: foundEarlier({
        journal: settled.journal,
        client: visit.client,
        visits: all.filter(({ date }) => date <= on),
        findings: settled.foundOf(name),
        on,
      }),
      stamps: share ? stampsFor(visit) : [],
    };
  });
  return { on, now: minute(), visits, salon: settled.journal.salon.full, leftOut: kept.leftOut() };
};

const html = (body: string, policy = POLICY): Answer => ({ status: 200, body, type: 'text/html', policy });

const META = /<meta http-equiv="Content-Security-Policy" content="([^"]*)">\n/;

const WAYS = '<nav aria-label="Pages"><ul>';
const TOP = '<body>\n<header>\n';

/** Puts the way to the live page, which only a served page can lead to, before the other ways. */
const withToday = (body: string, up: string): string => {
  const today = `<li><a href="${up === '' ? './' : up}">Today</a></li>`;
  return body.includes(WAYS)
    ? body.replace(WAYS, (ways) => ways + today)
    : body.replace(TOP, (top) => `${top}${WAYS}${today}</ul></nav>\n`);
};

/**
 * A static page as it is served: with a way to the live page, and a script that takes in its new content, under the page's
 * own policy and more.
 */
const served = (name: string, body: string): Answer => {
  const up = '../'.repeat(name.split('/').length - 1);
  const policy = META.exec(body)?.[1] ?? "default-src 'none'";
  const script = `<script src="${up}refresh.js" data-page="${htmlText(name)}" data-events="${up}events" defer></script>\n`;
  return html(
    withToday(
      body.replace(META, () => script),
      up,
    ),
    `${policy}; script-src 'self'; connect-src 'self'; frame-ancestors 'none'`,
  );
};

/** The answer to what is asked for below the address of the pages; undefined for what is not there. */
export const livePageAt = (path: string, kept: Kept, options: LiveOptions): Answer | 'events' | undefined => {
  switch (path) {
    case '':
      return html(liveHtml(pageOf(kept.state(), kept, options), options.share));
    case 'part':
      return html(livePart(pageOf(kept.state(), kept, options)));
    case 'live.css':
      return { status: 200, body: STYLE + LIVE_STYLE, type: 'text/css' };
    case 'live.js':
      return { status: 200, body: LIVE_SCRIPT, type: 'text/javascript' };
    case 'refresh.js':
      return { status: 200, body: REFRESH_SCRIPT, type: 'text/javascript' };
    case 'events':
      return 'events';
    default: {
      const page = kept.page(path);
      return page === undefined ? undefined : served(path, page);
    }
  }
};
