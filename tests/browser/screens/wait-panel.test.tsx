import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { page } from 'vitest/browser';
import { EaselClock } from '../../../app/screens/easel/easel-clock.tsx';
import { RestingFace } from '../../../app/screens/easel/resting-face.tsx';
import { ReachPanel } from '../../../app/screens/easel/wait-panel.tsx';
import { type EaselSenses, easelSensesOf } from '../../../app/state/session/easel-senses.ts';
import { type MadeEasel, madeEasel } from './made-easel.ts';
import { type Shown, shown } from './shown.ts';

let made: MadeEasel;
let senses: EaselSenses;
let screen: Shown | null = null;
let stop = (): void => {};
const screenWatch = { staysOn: { value: true } as never, hold: vi.fn(), release: vi.fn() };

function Wait() {
  const step = made.easel.step.value;
  return (
    <main>
      {step && <EaselClock easel={made.easel} step={step} />}
      <ReachPanel easel={made.easel} senses={senses} />
      {senses.resting.value && <RestingFace easel={made.easel} senses={senses} />}
    </main>
  );
}

beforeEach(async () => {
  await page.viewport(390, 844);
  made = await madeEasel();
  made.goTo('dry');
  const { easel, store, clock } = made;
  senses = easelSensesOf({ easel, store, clock, screenWatch }, window);
  stop = senses.listen();
  screen = shown(<Wait />);
});
afterEach(() => {
  stop();
  screen?.leave();
  made.easel.leave();
  made.store.close();
  vi.restoreAllMocks();
});

const button = (name: string | RegExp) => page.getByRole('button', { name });
const reach = page.getByTestId('reach');
const opened = (): void => {
  const fold = document.querySelector('details');
  if (fold) fold.open = true;
};

test('one figure leads; from when to when is a touch away', async () => {
  const clock = page.getByTestId('clock');
  await expect.element(clock).toHaveTextContent(/Bone dry in about.+(min|h).*Look from .+ on\./);
  await expect.element(page.getByTestId('clock-range')).not.toBeInTheDocument();
  await button(/^\d+ (min|h)/).click();
  await expect
    .element(page.getByTestId('clock-range'))
    .toHaveTextContent(/^[\d:]+ to [\d:]+, from \d\d:\d\d to \d\d:\d\d$/);
});

test('a browser plays the sound on, and says so only once it does', async () => {
  opened();
  await expect.element(reach).toHaveTextContent('With the screen off, nothing calls you yet.');
  await button('Call me with the screen off').click();
  await expect.element(reach).toHaveTextContent('the sound plays on in silence and calls you');
  expect(navigator.mediaSession.playbackState).toBe('playing');
  expect(navigator.mediaSession.metadata?.title).toMatch(/^Look from \d\d:\d\d on$/);
  await button('Stop the sound that plays on').click();
  await expect.element(reach).toHaveTextContent('With the screen off, nothing calls you yet.');
  expect(navigator.mediaSession.playbackState).toBe('none');
});

test('refused by the browser: it is said, and the screen is kept on', async () => {
  vi.spyOn(HTMLMediaElement.prototype, 'play').mockRejectedValue(
    new DOMException('', 'NotAllowedError'),
  );
  opened();
  await button('Let the screen rest').click();
  await button(/Touch to go back/).click();
  await expect.element(reach).toHaveTextContent('The sound could not be kept going');
  expect(screenWatch.release).not.toHaveBeenCalled();
});

test('the dark face: the time, when to look, and a touch leads back; light once it is time', async () => {
  await button('Let the screen rest').click();
  const face = page.getByTestId('resting');
  await expect.element(face).toHaveTextContent(/^\d\d:\d\dBone dry in about\d.*Look from .* on\./);
  await expect.element(face).toHaveTextContent('Calls you with the screen off too.');
  expect(getComputedStyle(face.element()).backgroundColor).toBe('rgb(0, 0, 0)');
  const figure = face.element().querySelector('strong');
  expect(Number.parseFloat(getComputedStyle(figure as Element).fontSize)).toBeGreaterThanOrEqual(
    56,
  );
  made.wait(200);
  await expect.element(face).toHaveTextContent('Look at the sheet');
  expect(getComputedStyle(face.element()).backgroundColor).toBe('rgb(238, 238, 238)');
  await button(/Touch to go back/).click();
  await expect.element(face).not.toBeInTheDocument();
});

test('what the end of a wait says to a screen reader comes once, politely', async () => {
  expect(senses.told.value).not.toMatch(/^Look at the sheet/);
  made.wait(200);
  await expect.poll(() => senses.told.value).toMatch(/Look at the sheet\. Bone dry/);
});

test('the fallback: minutes for her own timer, and an entry for the calendar', async () => {
  const files: File[] = [];
  vi.stubGlobal('showSaveFilePicker', async ({ suggestedName }: { suggestedName: string }) => ({
    createWritable: async () => {
      const { readable, writable } = new TransformStream<Uint8Array>();
      void new Response(readable)
        .blob()
        .then((blob) => files.push(new File([blob], suggestedName)));
      return writable;
    },
  }));
  screen?.leave();
  screen = shown(<Wait />); // which way a file can leave is found when the panel is shown
  opened();
  await expect.element(reach).toHaveTextContent(/set your phone’s own timer to \d+ minutes?, or/);
  await button(/^Calendar entry for/).click();
  await expect.poll(() => files.length).toBe(1);
  const text = (await files[0]?.text()) ?? '';
  expect(files[0]?.name).toBe('look at the sheet.ics');
  expect(text).toMatch(/SUMMARY:Look at the sheet: /);
  expect(text).toMatch(/BEGIN:VALARM/);
  vi.unstubAllGlobals();
});
