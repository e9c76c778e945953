/** Wrong codes that a device may try before it has to wait, and milliseconds that it waits after each further one. */
const FREE_TRIES = 5;
const WAIT = 60_000;

/** Devices that are remembered; the one that tried least lately is forgotten first. */
const MOST_DEVICES = 256;

/** Slows whoever tries codes. It is asked for devices alone that are not in: one that is in is never held up. */
export type LockOut = {
  /** Milliseconds that a device has to wait before a code of its is looked at; 0 when it need not. */
  readonly waits: (device: string) => number;
  /** Notes a wrong code; gives whether the device has to wait from now on. */
  readonly wrong: (device: string) => boolean;
  /** Forgets what a device tried, once it came with the right code. */
  readonly forgive: (device: string) => void;
  /** Devices that are remembered. */
  readonly size: () => number;
};

/** Begins with no device known. `clock`: milliseconds that only go forward. */
export const lockOut = (clock: () => number): LockOut => {
  const devices = new Map<string, { tries: number; until: number }>();
  return {
    waits: (device) => Math.max(0, (devices.get(device)?.until ?? 0) - clock()),
    wrong: (device) => {
      const { tries } = devices.get(device) ?? { tries: 0 };
      const isLocked = tries + 1 >= FREE_TRIES;
      devices.delete(device);
      devices.set(device, { tries: tries + 1, until: isLocked ? clock() + WAIT : 0 });
      const [oldest = ''] = devices.keys();
      if (devices.size > MOST_DEVICES) devices.delete(oldest);
      return isLocked;
    },
    forgive: (device) => void devices.delete(device),
    size: () => devices.size,
  };
};
