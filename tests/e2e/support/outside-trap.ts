import { createServer } from 'node:http';

/** Chromium asks this itself as soon as a page has a text field; no page can make it or stop it. */
const browsersOwn = 'content-autofill.googleapis.com:443';

export interface OutsideTrap {
  /** For a browser context's `proxy`: everything but this machine goes through the trap. */
  readonly proxy: { server: string; bypass: string };
  /** What was asked for outside the own origin. */
  readonly caught: readonly string[];
  close(): Promise<void>;
}

/**
 * A proxy that lets nothing through and notes what was asked. Page, worker and service worker all go
 * through it, while a page's request events do not show what a service worker asks for.
 */
export function outsideTrap(): Promise<OutsideTrap> {
  const caught: string[] = [];
  const server = createServer((request, response) => {
    caught.push(request.url ?? '?');
    response.writeHead(403).end();
  });
  server.on('connect', (request, socket) => {
    if (request.url !== browsersOwn) caught.push(request.url ?? '?');
    socket.on('error', () => {}); // a browser that is closing cuts the line: nothing was let through
    socket.end('HTTP/1.1 403 Forbidden\r\n\r\n');
  });
  return new Promise((listening) => {
    server.listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      listening({
        proxy: { server: `http://127.0.0.1:${port}`, bypass: '127.0.0.1' },
        caught,
        close: () =>
          new Promise<void>((closed) => {
            server.close(() => closed());
            server.closeAllConnections();
          }),
      });
    });
  });
}
