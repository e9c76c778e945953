// Holds the process up for PAUSE_MS milliseconds before step PAUSE_AT of writing below PAUSE_BELOW, as a busy disk would.
import { watchDisk } from '../../tests/promise/preload/disk.mjs';

let step = 0;

watchDisk(process.env.PAUSE_BELOW ?? '', () => {
  if (++step === Number(process.env.PAUSE_AT))
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, Number(process.env.PAUSE_MS));
  return undefined;
});
