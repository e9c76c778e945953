/**
 * The script of the live page: it lets the minutes run, and takes in what changed. Times of day are held against the
 * machine's clock, not the phone's. Plain script as browsers read it; the page works out nothing else.
 */
export const LIVE_SCRIPT = `'use strict';
(() => {
  const byId = (id) => document.getElementById(id);
  let noted = 0;
  let at = 0;
  let told = new Set();
  let sound;

  const two = (n) => String(n).padStart(2, '0');
  const sync = () => { noted = Number(byId('live').dataset.now); at = Date.now(); };
  const now = () => noted + (Date.now() - at) / 60000;
  const say = (element, said) => { if (element && element.textContent !== said) element.textContent = said; };
  const until = (minutes) => minutes >= 0 ? '(in ' + Math.ceil(minutes) + ' min)' : '(' + Math.floor(-minutes) + ' min late)';

  const beep = () => {
    if (!sound) return;
    for (const at of [0, 0.35, 0.7]) {
      const tone = sound.createOscillator();
      const loud = sound.createGain();
      tone.frequency.value = 880;
      loud.gain.value = 0.25;
      tone.connect(loud).connect(sound.destination);
      tone.start(sound.currentTime + at);
      tone.stop(sound.currentTime + at + 0.2);
    }
    if (navigator.vibrate) navigator.vibrate([300, 100, 300]);
  };

  const tick = () => {
    const minute = now();
    const ofClock = ((Math.floor(minute) % 1440) + 1440) % 1440;
    say(byId('clock'), two(Math.floor(ofClock / 60)) + ':' + two(ofClock % 60));
    let title = 'Today';
    for (const run of document.querySelectorAll('.run')) {
      const { on, look, far } = run.dataset;
      say(run.querySelector('.minutes'), String(Math.max(0, Math.floor(minute - on))));
      const isPast = far !== undefined && minute > Number(far);
      const isDue = look !== undefined && minute >= Number(look);
      if (look !== undefined) say(run.querySelector('.to-look'), until(look - minute));
      if (far !== undefined) say(run.querySelector('.to-far'), isPast ? '(' + Math.floor(minute - far) + ' min past)' : '(in ' + Math.ceil(far - minute) + ' min)');
      run.dataset.state = isPast ? 'past' : isDue ? 'look' : 'on';
      const past = run.querySelector('.past');
      if (past.hidden === isPast) past.hidden = !isPast;
      const name = run.querySelector('h3').textContent;
      if (isPast) title = 'Past its time: ' + name;
      else if (isDue && title === 'Today') title = 'Look: ' + name;
      for (const [is, key] of [[isDue, name + ' look ' + look], [isPast, name + ' past ' + far]])
        if (is && !told.has(key)) { told.add(key); beep(); }
    }
    if (document.title !== title) document.title = title;
  };

  const refresh = async () => {
    const answer = await fetch('part', { cache: 'no-store' });
    if (!answer.ok) throw new Error(String(answer.status));
    const fresh = new DOMParser().parseFromString(await answer.text(), 'text/html').getElementById('live');
    const focus = document.activeElement;
    const key = focus.dataset.line ? [focus.dataset.client, focus.dataset.line] : focus.getAttribute('href');
    byId('live').replaceWith(document.adoptNode(fresh));
    sync();
    tick();
    // Whoever works with the keyboard stays where she was.
    const back = Array.isArray(key)
      ? [...document.querySelectorAll('button[data-line]')].find((one) => one.dataset.client === key[0] && one.dataset.line === key[1])
      : [...document.querySelectorAll('#live a')].find((one) => one.getAttribute('href') === key);
    if (back) back.focus({ preventScroll: true });
  };

  const source = new EventSource('events');
  const away = (is) => { byId('away').hidden = !is; };
  source.addEventListener('open', () => { away(false); refresh().catch(() => away(true)); });
  source.addEventListener('change', () => refresh().catch(() => away(true)));
  source.addEventListener('error', () => away(true));

  const stayAwake = () => { if (navigator.wakeLock && byId('sound')) navigator.wakeLock.request('screen').catch(() => {}); };
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible') return;
    stayAwake();
    refresh().catch(() => away(true));
  });

  document.addEventListener('click', async (event) => {
    const button = event.target.closest('button');
    if (!button) return;
    stayAwake();
    if (button.id === 'sound') {
      const isOn = button.getAttribute('aria-pressed') !== 'true';
      sound = isOn ? new AudioContext() : undefined;
      button.setAttribute('aria-pressed', String(isOn));
      button.textContent = 'Sound at the next look: ' + (isOn ? 'on' : 'off');
      beep();
      return;
    }
    const { client, line } = button.dataset;
    button.disabled = true;
    try {
      const answer = await fetch('stamp', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ client, line }),
      });
      say(byId('noted'), await answer.text());
      await refresh();
    } catch {
      say(byId('noted'), 'Nothing was noted: no connection to the notes.');
    } finally {
      button.disabled = false;
    }
  });

  sync();
  tick();
  stayAwake();
  setInterval(tick, 1000);
})();
`;

/** The script that a card or a list gets while it is served: it takes in its own new content, and stays where it was. */
export const REFRESH_SCRIPT = `'use strict';
(() => {
  const { page, events } = document.currentScript.dataset;
  const source = new EventSource(events);
  const refresh = async () => {
    const answer = await fetch(location.href, { cache: 'no-store' });
    if (!answer.ok) return;
    const fresh = new DOMParser().parseFromString(await answer.text(), 'text/html');
    for (const part of ['header', 'main']) {
      const [old, now] = [document.querySelector(part), fresh.querySelector(part)];
      if (old && now) old.replaceWith(document.adoptNode(now));
    }
    document.title = fresh.title;
  };
  let opened = false;
  source.addEventListener('open', () => { if (opened) refresh(); opened = true; });
  source.addEventListener('change', (event) => { if (JSON.parse(event.data).includes(page)) refresh(); });
})();
`;
