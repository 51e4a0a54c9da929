import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { connect } from 'node:net';
import { setTimeout as later } from 'node:timers/promises';

/** Another browser engine, driven as a painter would: what is seen on its page is pressed. */
export interface Engine {
  /** Name and version as the browser tells them. */
  readonly version: string;
  go(url: string): Promise<void>;
  /** A function's body run in the page. */
  run<T>(script: string, ...args: unknown[]): Promise<T>;
  /** Presses the first element of that XPath; false where there is none to be pressed. */
  press(xpath: string): Promise<boolean>;
  /** Keys, or the path of a file, into the first element of that XPath; false where there is none. */
  type(xpath: string, text: string): Promise<boolean>;
  close(): Promise<void>;
}

type Act = 'navigate' | 'script' | 'find' | 'click' | 'keys';
type Send = (act: Act, args: Readonly<Record<string, unknown>>) => Promise<unknown>;

/** Key of an element in answers (W3C WebDriver, 12). */
const elementKey = 'element-6066-11e4-a52e-4f735466cecf';

const engineBy = (version: string, send: Send, close: () => Promise<void>): Engine => {
  const find = async (value: string): Promise<string | null> => {
    const found = await send('find', { using: 'xpath', value }).catch(() => null);
    return (found as Record<string, string> | null)?.[elementKey] ?? null;
  };
  return {
    version,
    close,
    go: async (url) => void (await send('navigate', { url })),
    run: (script, ...args) => send('script', { script, args }) as Promise<never>,
    async press(xpath) {
      const id = await find(xpath);
      if (id === null) return false;
      return send('click', { id }).then(
        () => true,
        () => false, // covered, or gone since
      );
    },
    async type(xpath, text) {
      const id = await find(xpath);
      if (id !== null) await send('keys', { id, text });
      return id !== null;
    },
  };
};

async function end(process: ChildProcess): Promise<void> {
  const gone = new Promise((done) => process.once('exit', done));
  process.kill('SIGKILL');
  await gone;
}

/** Asked until it answers: something else that starts up. */
async function patiently<T>(ask: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries++) {
    try {
      return await ask();
    } catch (fault) {
      if (tries === 300) throw fault;
      await later(100);
    }
  }
}

const webkitBrowsers = ['4.1', '4.0', '6.0'].flatMap((version) =>
  [`webkit2gtk-${version}`, `webkitgtk-${version}`].map(
    (folder) => `/usr/lib/x86_64-linux-gnu/${folder}/MiniBrowser`,
  ),
);
const webkitDriver = '/usr/bin/WebKitWebDriver';
const screenServer = '/usr/bin/Xvfb';
const firefox = '/usr/bin/firefox-esr';

/** What of Debian's packages is missing for an engine, in words; null where it can be driven. */
export const missingFor = {
  WebKit: (): string | null =>
    [webkitDriver, screenServer].every(existsSync) && webkitBrowsers.some(existsSync)
      ? null
      : 'apt-get install webkit2gtk-driver xvfb',
  Firefox: (): string | null => (existsSync(firefox) ? null : 'apt-get install firefox-esr'),
};

/** WebKitGTK under a screen of its own, by W3C WebDriver. `folder` is its home. */
async function startWebKit(folder: string): Promise<Engine> {
  const display = `:${200 + (process.pid % 300)}`;
  const port = 20_000 + (process.pid % 20_000);
  const xvfb = spawn(screenServer, [display, '-screen', '0', '1280x1000x24'], { stdio: 'ignore' });
  const driver = spawn(webkitDriver, [`--port=${port}`], {
    stdio: 'ignore',
    env: { ...process.env, DISPLAY: display, HOME: folder, XDG_RUNTIME_DIR: folder },
  });
  const ask = async (path: string, body: unknown, method = 'POST'): Promise<unknown> => {
    const response = await fetch(`http://127.0.0.1:${port}/session${path}`, {
      method,
      ...(body !== null && { body: JSON.stringify(body) }),
    });
    const { value } = (await response.json()) as { value: unknown };
    if (!response.ok) throw new Error(JSON.stringify(value));
    return value;
  };
  const binary = webkitBrowsers.find(existsSync);
  const alwaysMatch = { 'webkitgtk:browserOptions': { binary, args: ['--automation'] } };
  const session = (await patiently(() => ask('', { capabilities: { alwaysMatch } }))) as {
    sessionId: string;
    capabilities: { browserVersion: string };
  };
  const at = `/${session.sessionId}`;
  await ask(`${at}/window/rect`, { width: 1200, height: 900 });
  const paths: Readonly<Record<Act, (id: unknown) => string>> = {
    navigate: () => '/url',
    script: () => '/execute/sync',
    find: () => '/element',
    click: (id) => `/element/${id}/click`,
    keys: (id) => `/element/${id}/value`,
  };
  return engineBy(
    `WebKitGTK ${session.capabilities.browserVersion}`,
    (act, { id, ...args }) => ask(`${at}${paths[act](id)}`, args),
    async () => {
      await ask(at, null, 'DELETE').catch(() => undefined);
      await end(driver);
      await end(xvfb);
    },
  );
}

/** What it asks its maker for on its own account leads nowhere; pages of this device are not asked for by a proxy. */
const deadEnd = [
  ...['network.proxy.type=1', 'network.proxy.http="127.0.0.1"', 'network.proxy.http_port=9'],
  ...['network.proxy.ssl="127.0.0.1"', 'network.proxy.ssl_port=9'],
].map((each) => each.replace(/^(.*)=(.*)$/, 'user_pref("$1", $2);'));

/** Firefox by its own protocol, Marionette: the commands of WebDriver, each as its length, a colon and JSON. */
async function startFirefox(folder: string): Promise<Engine> {
  const { writeFileSync } = await import('node:fs');
  const port = 20_000 + ((process.pid + 7) % 20_000);
  writeFileSync(
    `${folder}/user.js`,
    [...deadEnd, `user_pref("marionette.port", ${port});`].join('\n'),
  );
  const browser = spawn(
    firefox,
    ['--headless', '--marionette', '--no-remote', '--width=1200', '--profile', folder],
    { stdio: 'ignore', env: { ...process.env, HOME: folder } },
  );
  const socket = await patiently(
    () =>
      new Promise<ReturnType<typeof connect>>((done, refused) => {
        const trying = connect(port, '127.0.0.1', () => done(trying)).once('error', refused);
      }),
  );
  const waiting = new Map<number, (answer: [number, number, unknown, unknown]) => void>();
  let seen: Buffer = Buffer.alloc(0);
  socket.on('data', (more) => {
    seen = Buffer.concat([seen, more as Buffer]);
    for (let colon = seen.indexOf(':'); colon > 0; colon = seen.indexOf(':')) {
      const ends = colon + 1 + Number(seen.subarray(0, colon));
      if (seen.length < ends) return;
      const answer = JSON.parse(seen.subarray(colon + 1, ends).toString());
      seen = seen.subarray(ends);
      if (Array.isArray(answer)) waiting.get(answer[1])?.(answer as never);
    }
  });
  let asked = 0;
  const ask = (command: string, args: object): Promise<unknown> =>
    new Promise((done, failed) => {
      const id = ++asked;
      waiting.set(id, ([, , fault, result]) => {
        waiting.delete(id);
        if (fault) failed(new Error(JSON.stringify(fault).slice(0, 400)));
        else done(result);
      });
      const text = JSON.stringify([0, id, command, args]);
      socket.write(`${Buffer.byteLength(text)}:${text}`);
    });
  const { capabilities } = (await ask('WebDriver:NewSession', {})) as {
    capabilities: { browserVersion: string };
  };
  const commands: Readonly<Record<Act, string>> = {
    navigate: 'WebDriver:Navigate',
    script: 'WebDriver:ExecuteScript',
    find: 'WebDriver:FindElement',
    click: 'WebDriver:ElementClick',
    keys: 'WebDriver:ElementSendKeys',
  };
  return engineBy(
    `Firefox ${capabilities.browserVersion}`,
    async (act, args) => {
      const answer = (await ask(commands[act], args)) as { value?: unknown } | null;
      return answer?.value;
    },
    async () => {
      socket.destroy();
      await end(browser);
    },
  );
}

/** `folder` holds all it keeps, and is the caller's to remove. */
export const startEngine = { WebKit: startWebKit, Firefox: startFirefox };
