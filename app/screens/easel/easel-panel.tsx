import { useSignal } from '@preact/signals';
import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { markOfStep, ownMarks } from '../../core/plan/details/place-marks.ts';
import { familyNameIn } from '../../core/plan/family-name-in.ts';
import { passageOf, type Step } from '../../core/plan/plan.ts';
import { washPlaces } from '../../core/plan/runs/wash-places.ts';
import { bandsWithin } from '../../core/reading/reading.ts';
import { cautionsDue, choosePrompt } from '../../core/session/choose-cue.ts';
import { isTimed } from '../../core/session/easel-time.ts';
import { explainTags } from '../../core/words/plan/beside.ts';
import { words as told, words } from '../../core/words/plan/words.ts';
import type { PaintCalls, ScrapCalls } from '../../state/painting/screen-calls.ts';
import type { OwnBoxState } from '../../state/paints/own-box.ts';
import { linkTo } from '../../state/router.ts';
import type { Desk } from '../../state/session/desk.ts';
import type { Easel } from '../../state/session/easel.ts';
import type { EaselSenses } from '../../state/session/easel-senses.ts';
import type { Keepsakes } from '../../state/session/keepsakes.ts';
import { Button, buttonClass } from '../../ui/controls/button.tsx';
import { ValueScale } from '../../ui/controls/value-scale.tsx';
import { Cautions, PaintCautions } from '../../ui/mixes/cautions.tsx';
import { amountsFor, PuddleList } from '../../ui/mixes/puddle-list.tsx';
import { PuddleRow } from '../../ui/mixes/puddle-row.tsx';
import { Consequence, LayOutList, ToolLine, TouchList } from '../../ui/mixes/step-parts.tsx';
import { AddPhoto } from '../record/add-keepsake.tsx';
import { EaselClock, OpenTime } from './easel-clock.tsx';
import styles from './easel-panel.module.css';
import { ScrapCompare } from './scrap-compare.tsx';
import type { EaselViewState } from './use-easel-view.ts';
import { MeanwhileList, ReachPanel } from './wait-panel.tsx';

interface EaselPanelProps {
  easel: Easel;
  senses: EaselSenses;
  keepsakes: Keepsakes;
  calls: PaintCalls & ScrapCalls;
  ownBox: OwnBoxState;
  desk: Desk;
  step: Step;
  view: EaselViewState;
}

/** The sentence first, then the clock, how it is done, the puddles, and what to watch. */
export function EaselPanel(props: EaselPanelProps) {
  const { easel, senses, keepsakes, calls, ownBox, desk, step, view } = props;
  const { plan, seen } = desk;
  const { phase, stepIndex, weather } = easel.session.value;
  const finished = phase === 'finished';
  // Before she starts she takes up the brush; once she paints, what to do with it comes first.
  const painting = phase === 'painting';
  const mixes = plan.mixes.filter(({ id }) => step.mixes.includes(id));
  const top = useRef<HTMLDivElement>(null);
  const due = senses.cue.value?.kind === 'end';
  // Another step, or a clock that calls: its sentence and the clock are what she looks for.
  useLayoutEffect(() => {
    top.current?.parentElement?.scrollTo({ top: 0 });
  }, [step.key, due]);
  return (
    <div ref={top} class={styles.panel}>
      {easel.problem.value && <p role="alert">{easel.problem.value}</p>}
      <EaselPrompt easel={easel} step={step} />
      {!finished && (
        <div class={styles.clock} data-due={due || undefined}>
          <div>
            <EaselClock easel={easel} step={step} />
            <OpenTime easel={easel} />
          </div>
          {painting && <SoundOffer senses={senses} />}
        </div>
      )}
      {finished && (
        <>
          <p>Photograph your painting: in the record it stands beside the photo and the plan.</p>
          <AddPhoto {...{ easel, keepsakes, sessionId: desk.sessionId }} />
        </>
      )}
      {!finished && <Cautions said={cautionsDue(plan.steps, stepIndex, weather)} />}
      {!finished && step.kind !== 'puddles' && (
        <PuddleRow
          mixes={mixes}
          marks={ownMarks(step)}
          familyName={familyNameIn(plan, seen.reading)}
        />
      )}
      {!finished && step.kind === 'puddles' && (
        <ScrapCompare {...{ easel, ownBox, calls, desk, step }} />
      )}
      {view.shown.value === 'where' && !finished && (
        <TagWords easel={easel} desk={desk} step={step} />
      )}
      {phase === 'drying' && <ReachPanel easel={easel} senses={senses} />}
      {phase === 'drying' && (
        <MeanwhileList easel={easel} desk={desk} onEdges={() => view.look('edges')} />
      )}
      {!finished && step.kind === 'puddles' && <PaintCautions plan={plan} />}
      {!finished &&
        step.notes?.map(told).map((note) => (
          <p key={note} class={styles.caution}>
            {note}
          </p>
        ))}
      <Consequence step={step} />
      {!finished && !painting && <ToolLine step={step} />}
      {!finished && <TouchList step={step} techniquesOnly />}
      {step.soften.length > 0 && <p>{told(step.soften)}</p>}
      {step.soften.length > 0 && painting && (
        <p>‘Wash is on’ starts the minutes in which its edge can still be softened.</p>
      )}
      {step.kind === 'prepare' && <LayOutList plan={plan} />}
      {step.kind === 'transfer' && !finished && (
        <a class={buttonClass()} href={linkTo(desk.paintingId, 'drawing')}>
          Drawing to transfer
        </a>
      )}
      {mixes.length > 0 && (
        <PuddleList
          plan={plan}
          mixes={mixes}
          familyName={familyNameIn(plan, seen.reading)}
          calls={calls}
          sheet={painting ? undefined : amountsFor(step, seen.reading)}
          strongest={markOfStep[step.kind] !== undefined}
        />
      )}
      {!finished && !painting && step.kind !== 'puddles' && mixes.length > 0 && (
        <details>
          <summary class={styles.look}>Compare on a scrap</summary>
          <ScrapCompare {...{ easel, ownBox, calls, desk, step }} />
        </details>
      )}
      {step.watch.length > 0 && <p>{told(step.watch)}</p>}
      {painting && <ToolLine step={step} />}
      <ValueScale
        bands={bandsWithin(seen.reading, passageOf(step, plan))}
        done={easel.bandsDone.value}
        current={view.shown.value === 'band' ? view.bands.value : new Set(step.bands)}
        onBand={view.pick}
      />
      {easel.screenStaysOn.value === false && (
        <p class={styles.caution}>
          The screen may go dark: this device doesn't keep it on just now. The clock stays right.
        </p>
      )}
    </div>
  );
}

const ends = 'Finished. Everything you did is in the record.';

/**
 * What to act on: two lines of it where clock and puddles need the room, and all of it after a touch. It follows the
 * clock by itself, so that the panel round it need not.
 */
function EaselPrompt({ easel, step }: { easel: Easel; step: Step }) {
  const session = easel.session.value;
  const hasRoom = step.mixes.length === 0 && !isTimed(step);
  const whole = useSignal(hasRoom);
  useLayoutEffect(() => {
    whole.value = hasRoom;
  }, [step.key]);
  return (
    <button
      type="button"
      class={styles.prompt}
      aria-expanded={whole.value}
      onClick={() => {
        whole.value = !whole.value;
      }}
    >
      <span data-testid="prompt">
        {session.phase === 'finished' ? ends : words(choosePrompt(step, session, easel.time.value))}
      </span>
    </button>
  );
}

/** What the tags on the picture mean: said at the first wash of a session, and not again. */
function TagWords({ easel, desk, step }: { easel: Easel; desk: Desk; step: Step }) {
  const { plan, seen } = desk;
  const { doneKeys } = easel.session.value;
  const said = plan.steps.some(({ kind, key }) => kind === 'wash' && doneKeys.includes(key));
  const words = useMemo(() => {
    if (said || step.kind !== 'wash') return '';
    const { slots, raster, squares } = seen.reading;
    const shown = { slots, raster, slotMap: seen.slotMap, ...(squares && { squares }) };
    return explainTags(washPlaces(step, plan, shown));
  }, [said, step, plan, seen]);
  return words ? (
    <p class="quiet" data-testid="tag-words">
      On the picture: {words}
    </p>
  ) : null;
}

/** After a reload the browser wants a tap before the clock can be heard again. */
function SoundOffer({ senses }: { senses: EaselSenses }) {
  return senses.sound.value === 'tap' ? (
    <Button onClick={senses.touched}>Tap for sound</Button>
  ) : null;
}
