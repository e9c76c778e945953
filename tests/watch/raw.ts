import { connect } from 'node:net';

/**
 * Sends bytes as they are on a connection of their own, and gives all that came back until the other side closed it.
 * `isLast`: says at once that nothing more comes.
 */
export const sendRaw = (
  {
    port,
    from = '127.0.0.1',
    isLast = false,
  }: { readonly port: number; readonly from?: string; readonly isLast?: boolean },
  text: string,
): Promise<string> =>
  new Promise((done) => {
    let come = '';
    const socket = connect({ port, host: '127.0.0.1', localAddress: from });
    socket.on('connect', () => {
      socket.write(Buffer.from(text, 'latin1'));
      if (isLast) socket.end();
    });
    socket.on('data', (bytes) => {
      come += bytes.toString('latin1');
    });
    // One that is cut off while it sends has had its answer, or gets none.
    socket.on('error', () => socket.destroy());
    socket.on('close', () => done(come));
  });

/** The status lines of everything that came back. */
export const statusesIn = (come: string): number[] =>
  [...come.matchAll(/^HTTP\/1\.1 (\d+) /gm)].map(([, status]) => Number(status));
