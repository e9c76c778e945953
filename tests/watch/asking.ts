import { request } from 'node:http';

/** What came back. */
export type Got = { readonly status: number; readonly headers: Record<string, unknown>; readonly body: string };

/** Asks as no browser would let a page ask: with any header. */
export const ask = (address: string, headers: Record<string, string> = {}, method = 'GET', body = ''): Promise<Got> =>
  new Promise((done, failed) => {
    const length = Buffer.byteLength(body);
    // The path goes out as written; a URL would be put in order first.
    const { hostname, port, origin } = new URL(address);
    const path = address.slice(origin.length);
    const asked = request(
      { hostname, port, path, method, headers: { ...headers, 'content-length': length } },
      (answer) => {
        let text = '';
        answer.on('data', (chunk: Buffer) => {
          text += chunk.toString();
        });
        answer.on('end', () => done({ status: answer.statusCode ?? 0, headers: answer.headers, body: text }));
      },
    );
    asked.on('error', failed);
    asked.end(body);
  });
