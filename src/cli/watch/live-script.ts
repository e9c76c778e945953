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
  let lock;
  let picture;

  const two = (n) => String(n).padStart(2, '0');
  const sync = () => { noted = Number(byId('live').dataset.now); at = Date.now(); };
  const now = () => noted + (Date.now() - at) / 60000;
  const say = (element, said) => { if (element && element.textContent !== said) element.textContent = said; };
  const note = (said) => {
    clearTimeout(note.timer);
    say(byId('noted'), said);
    note.timer = setTimeout(() => say(byId('noted'), ''), 8000);
  };
  const until = (minutes) => minutes >= 0 ? '(in ' + Math.ceil(minutes) + ' min)' : '(' + Math.floor(-minutes) + ' min late)';

  const beep = () => {
    if (!sound) return;
    sound.resume();
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
      if (far !== undefined) say(run.querySelector('.to-far'), isPast ? '(' + Math.floor(minute - far) + ' min past)' : '(' + Math.ceil(far - minute) + ' min left at most)');
      run.dataset.state = isPast ? 'past' : isDue ? 'look' : 'on';
      run.classList.toggle('due', isDue);
      const past = run.querySelector('.past');
      if (past.hidden === isPast) past.hidden = !isPast;
      const name = run.querySelector('h3').textContent;
      if (isPast) title = 'Past its time: ' + name;
      else if (isDue && title === 'Today') title = 'Look: ' + name;
      for (const [is, key] of [[isDue, name + ' look ' + look], [isPast, name + ' past ' + far]])
        if (is && !told.has(key)) { told.add(key); beep(); }
    }
    if (document.title !== title) document.title = title;
    if (picture) picture.draw(minute);
  };

  const refresh = async () => {
    const answer = await fetch('part', { cache: 'no-store' });
    if (!answer.ok) throw new Error(String(answer.status));
    const fresh = new DOMParser().parseFromString(await answer.text(), 'text/html').getElementById('live');
    if (fresh.dataset.day !== byId('live').dataset.day) { location.reload(); return; }
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

  // Browsers keep a screen on for a playing picture also where they withhold the means made for it, as they do over a
  // network without encryption. With a silent track it counts as one that is watched.
  const play = () => {
    const canvas = document.createElement('canvas');
    canvas.width = canvas.height = 16;
    const brush = canvas.getContext('2d');
    const draw = (minute) => { brush.fillStyle = Math.floor(minute * 60) % 2 ? '#000' : '#010101'; brush.fillRect(0, 0, 16, 16); };
    draw(0);
    const stream = canvas.captureStream();
    for (const track of sound.createMediaStreamDestination().stream.getAudioTracks()) stream.addTrack(track);
    const video = document.createElement('video');
    video.id = 'awake';
    video.playsInline = true;
    video.setAttribute('aria-hidden', 'true');
    video.srcObject = stream;
    document.body.append(video);
    picture = { video, draw };
    return video.play();
  };

  const stayAwake = async () => {
    if (!sound) return;
    try {
      if (navigator.wakeLock) lock = await navigator.wakeLock.request('screen');
      else if (picture) await picture.video.play();
      else await play();
    } catch {
      note('This browser does not keep the screen on. Set a longer time-out on the device.');
    }
  };

  const letSleep = () => {
    if (lock) lock.release();
    if (picture) picture.video.remove();
    lock = picture = undefined;
  };

  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible') return;
    stayAwake();
    refresh().catch(() => away(true));
  });

  document.addEventListener('click', async (event) => {
    const button = event.target.closest('button');
    if (!button) return;
    if (button.id === 'sound') {
      const isOn = !sound;
      if (!isOn) { letSleep(); sound.close(); }
      sound = isOn ? new AudioContext() : undefined;
      button.textContent = button.dataset.label + (isOn ? 'on' : 'off');
      beep();
      stayAwake();
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
      note(await answer.text());
    } catch {
      // The press may have come through and its answer not: nobody here knows.
      note('No answer came. Look whether it was noted before you press again.');
    }
    await refresh().catch(() => away(true));
    button.disabled = false;
  });

  sync();
  tick();
  setInterval(tick, 1000);
})();
`;

/** The script that a card or a list gets while it is served: it takes in its own new content, and stays where it was. */
export const REFRESH_SCRIPT = `'use strict';
(() => {
  const { page, events } = document.currentScript.dataset;
  let source;
  const refresh = async () => {
    const answer = await fetch(location.href, { cache: 'no-store' });
    if (!answer.ok) return;
    const fresh = new DOMParser().parseFromString(await answer.text(), 'text/html');
    for (const part of ['header', 'main']) {
      const [old, now] = [document.querySelector(part), fresh.querySelector(part)];
      if (!old || !now) continue;
      // A fold is known by its heading; what was opened stays open, and the keyboard stays on it.
      const foldOf = (id) => (id ? now.querySelector('#' + CSS.escape(id))?.closest('details') : undefined);
      for (const fold of old.querySelectorAll('details[open]')) {
        const same = foldOf(fold.querySelector('summary [id]')?.id);
        if (same) same.open = true;
      }
      if (old.isEqualNode(now)) continue;
      const focused = document.activeElement?.closest('summary')?.querySelector('[id]')?.id;
      const stays = old.contains(document.activeElement) && foldOf(focused)?.querySelector('summary');
      old.replaceWith(document.adoptNode(now));
      if (stays) stays.focus({ preventScroll: true });
    }
    if (document.title !== fresh.title) document.title = fresh.title;
  };
  // A browser holds few connections to one address, so a page that is not seen gives its own up.
  const listen = () => {
    if (document.visibilityState !== 'visible') {
      source?.close();
      source = undefined;
      return;
    }
    if (source) return;
    source = new EventSource(events);
    // What changed between the page's coming and its listening is told to nobody, so it looks once it listens.
    // Where the notes cannot be asked, the page stands as it is until the next line opens.
    const look = () => refresh().catch(() => undefined);
    source.addEventListener('open', look);
    source.addEventListener('change', (event) => { if (JSON.parse(event.data).includes(page)) look(); });
  };
  document.addEventListener('visibilitychange', listen);
  listen();
})();
`;
