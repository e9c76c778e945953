// Kills the process, as a power cut would, at step KILL_AT of writing below KILL_BELOW: half a write is done by then.
import { watchDisk } from './disk.mjs';

let step = 0;

watchDisk(process.env.KILL_BELOW ?? '', ({ half }) => {
  if (++step < Number(process.env.KILL_AT)) return undefined;
  half();
  process.kill(process.pid, 'SIGKILL');
  return undefined;
});
