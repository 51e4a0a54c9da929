import type { TimedStep } from '../../../app/core/session/drying-clock.ts';
import type { EventBody, Moment, SessionEvent } from '../../../app/core/session/session-event.ts';

export const minute = 60_000;

const step = (
  key: string,
  kind: TimedStep['kind'],
  paint: number,
  shine = 0,
  dry = 0,
): TimedStep => ({
  key,
  kind,
  paintMinutes: [paint / 2, paint],
  shineMinutes: [shine / 2, shine],
  dryMinutes: [dry / 2, dry],
});

export const steps: readonly TimedStep[] = [
  step('prepare', 'prepare', 10),
  step('wash 1', 'wash', 20, 6, 60),
  step('dry 1', 'dry', 0),
  step('wash 2', 'wash', 20, 4, 30),
  step('last look', 'last-look', 5),
];

/** A device with its two clocks, writing a log. */
export function device() {
  let wallMs = Date.UTC(2031, 2, 29, 9);
  let monoMs = 1000;
  let boot = 0;
  const events: SessionEvent[] = [];
  const now = (): Moment => ({ wallMs, monoMs, bootId: `boot ${boot}` });
  return {
    events,
    now,
    log(...bodies: EventBody[]): void {
      for (const what of bodies) {
        const seq = events.length;
        events.push({ id: `e${seq}`, sessionId: 's', seq, planId: 'p', ...now(), what });
      }
    },
    wait(ms: number): void {
      wallMs += ms;
      monoMs += ms;
    },
    /** The monotonic clock stops in sleep. */
    sleep(ms: number): void {
      wallMs += ms;
    },
    moveWallClock(ms: number): void {
      wallMs += ms;
    },
    restart(awayMs: number): void {
      wallMs += awayMs;
      monoMs = 50;
      boot++;
    },
  };
}
