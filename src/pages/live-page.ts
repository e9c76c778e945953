import type { Minute, VisitReckoned } from '../reckon/model.ts';
import type { OpenRun } from '../reckon/timing/open-runs.ts';
import { clockText } from '../text/dates.ts';
import { dayText } from './days.ts';
import { shownText } from './escape.ts';
import { htmlText } from './html-text.ts';
import { type LeftOut, leftOutText } from './left-out.ts';

/**
 * The page that stands beside the chair: today's visits, what is on, since when, and what is due next. It is a page with
 * a script, unlike every other; without one it shows the minutes as they were when it was made.
 */

/** A visit of the day as the live page shows it. */
export type LiveVisit = {
  readonly visit: VisitReckoned;
  readonly open: readonly OpenRun[];
  /** Address of the client's card. */
  readonly card: string;
  /** How many alerts the card begins with. */
  readonly alerts: number;
  /** What is found in the visit that someone could be hurt by, in words. */
  readonly stops: readonly string[];
  /** The stops found in her earlier visits, in words. */
  readonly earlier?: string | undefined;
  /** What can be noted with one press, none unless noting is allowed: a label, and the line without its time. */
  readonly stamps: readonly { readonly label: string; readonly line: string }[];
};

export type LivePage = {
  readonly on: string;
  /** Minutes since midnight with their part of a minute, by the machine’s clock. */
  readonly now: number;
  readonly visits: readonly LiveVisit[];
  readonly salon: string | undefined;
  /** Clients at whose notes the program failed; whether they have a visit of the day is not known here. */
  readonly leftOut: readonly LeftOut[];
};

const text = (said: string): string => htmlText(shownText(said));

/** A minute of the day, and where a script finds the minutes to or from it. */
const clock = (minute: Minute): string => `<time>${clockText(minute)}</time>`;

/** `Bowl A, hairline`. */
export const runName = ({ bowl, zone }: { readonly bowl: string | undefined; readonly zone: string }): string =>
  [bowl === undefined ? 'A bowl' : `Bowl ${bowl}`, ...(zone === '' ? [] : [zone])].join(', ');

const whole = (minutes: number): string => `${Math.max(0, Math.floor(minutes))}`;

const lookHtml = ({ nextLook, lastLook, run }: OpenRun): string => {
  const last = lastLook > run.firstOn ? `Looked at ${clock(lastLook)}. ` : '';
  if (nextLook === undefined) return last === '' ? '' : `<p>${last}</p>\n`;
  return `<p class="look">${last}Next look <strong>${clock(nextLook)}</strong> <span class="to-look"></span></p>\n`;
};

const spanHtml = ({ time }: OpenRun): string => {
  if (time === undefined) return '<p>No time line on the shelf applies to it.</p>\n';
  const { near, far, from, nearAt, farAt, product } = time;
  const minutes = near === far ? `${near}` : `${near} to ${far}`;
  const ends = near === far ? clock(farAt) : `${clock(nearAt)} to ${clock(farAt)}`;
  return `<p>${text(product)} takes ${minutes} min from ${from}: ${ends} <span class="to-far"></span></p>\n`;
};

const runHtml = (open: OpenRun, now: number): string => {
  const { run, time, nextLook } = open;
  const data = [
    `data-on="${run.firstOn}"`,
    ...(nextLook === undefined ? [] : [`data-look="${nextLook}"`]),
    ...(time === undefined ? [] : [`data-far="${time.farAt}"`]),
  ].join(' ');
  const isPast = time !== undefined && now > time.farAt;
  return `<li class="run" ${data}>
<h3>${text(runName(run))}</h3>
<p class="clock"><span class="minutes">${whole(now - run.firstOn)}</span> min on, since ${clock(run.firstOn)}</p>
${lookHtml(open)}${spanHtml(open)}<p class="past" role="alert"${isPast ? '' : ' hidden'}><strong>Past its time.</strong>${open.caution === undefined ? '' : ` ${text(open.caution)}`}</p>
</li>`;
};

const stageText = ({ visit, open }: LiveVisit): string => {
  if (open.length > 0) return '';
  return visit.clock.runs.length > 0 || visit.clock.unclocked.length > 0
    ? '<p>All is off.</p>\n'
    : '<p>Nothing is on yet.</p>\n';
};

const stampsHtml = ({ stamps, visit }: LiveVisit): string =>
  stamps.length === 0
    ? ''
    : `<div class="stamps">\n${stamps
        .map(
          ({ label, line }) =>
            `<button type="button" data-client="${htmlText(visit.client.name)}" data-line="${htmlText(line)}">${text(label)}</button>`,
        )
        .join('\n')}\n</div>\n`;

const stopsHtml = ({ stops }: LiveVisit): string =>
  stops.length === 0
    ? ''
    : `<ul class="stops">\n${stops.map((said) => `<li><strong>stop</strong> ${text(said)}</li>`).join('\n')}\n</ul>\n`;

const earlierHtml = ({ earlier }: LiveVisit): string =>
  earlier === undefined ? '' : `<p>Found in earlier visits: ${text(earlier)}</p>\n`;

const visitHtml = (one: LiveVisit, index: number, now: number): string => {
  const { visit, open, card, alerts } = one;
  const minutes = visit.visit.entry.time?.minutes;
  const at = minutes === undefined ? '' : `${clock(minutes)} `;
  const warned =
    visit.client.entries.length === 0
      ? ' <strong>No client entry has this name: her alerts are not known here.</strong>'
      : alerts === 0
        ? ''
        : ` <strong>${alerts} ${alerts === 1 ? 'alert' : 'alerts'}: read the card first.</strong>`;
  return `<section aria-labelledby="visit-${index}">
<h2 id="visit-${index}">${at}${text(visit.client.full)}</h2>
<p><a href="${htmlText(card)}">Card of ${text(visit.client.full)}</a>${warned}</p>
${stopsHtml(one)}${earlierHtml(one)}${open.length === 0 ? stageText(one) : `<ul class="runs">\n${open.map((run) => runHtml(run, now)).join('\n')}\n</ul>\n`}${stampsHtml(one)}</section>`;
};

/** What of the live page changes: everything between its header and its end. */
export const livePart = ({ on, now, visits, leftOut }: LivePage): string => {
  const none = '<p>No visit is noted for the day.</p>';
  const body = visits.length === 0 ? none : visits.map((one, index) => visitHtml(one, index, now)).join('\n');
  const failed = leftOutText(leftOut, shownText);
  const warned = failed === undefined ? '' : `<p class="past" role="alert"><strong>${htmlText(failed)}</strong></p>\n`;
  return `<div id="live" data-now="${now}" data-day="${on}">\n${warned}${body}\n</div>`;
};

/** What the button does that browsers allow after a press only; followed by `on` or `off`. */
const SOUND = 'Sound at every look, screen lit: ';

/** The whole live page. `share`: it stands on a phone at the chair, and can note the clock. */
export const liveHtml = (page: LivePage, share: boolean): string => {
  const sound = share
    ? `<p><button type="button" id="sound" data-label="${SOUND}">${SOUND}off</button></p>\n<p id="noted" role="status"></p>\n`
    : '';
  return `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<meta name="referrer" content="no-referrer">
<meta name="robots" content="noindex">
<title>Today</title>
<link rel="stylesheet" href="live.css">
<script src="live.js" defer></script>
</head>
<body>
<header>
<h1>Today</h1>
<p>${dayText(page.on)}${page.salon === undefined ? '' : ` · ${text(page.salon)}`} · <span id="clock">${clockText(Math.floor(page.now))}</span></p>
<nav aria-label="Pages"><ul><li><a href="index.html">All clients</a></li><li><a href="findings.html">Findings</a></li></ul></nav>
<p id="away" role="alert" hidden><strong>No connection to the notes.</strong> What was noted since is not shown; the minutes run on.</p>
${sound}</header>
<main>
${livePart(page)}
</main>
</body>
</html>
`;
};
