import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';
import type { Change } from '../../model/alteration.ts';
import type { Point } from '../../model/lab.ts';
import type { Painting } from '../../model/painting.ts';
import { standingDecisions } from '../../model/standing-decisions.ts';
import { strokeOnPhoto } from '../../model/stroke-on-photo.ts';
import type { Studio } from '../../state/studio.ts';
import { DecidePlace } from '../common/decide-place.tsx';
import { isSlip } from '../strokes/is-slip.ts';
import { ChangesPanel, type ChangesView, type ChangeTools } from './changes-panel.tsx';
import { ChangesPicture } from './changes-picture.tsx';

const changesOf = ({ decisions }: Painting) => standingDecisions(decisions, 'alter');

/** She says what is painted otherwise than it is in the photo: left out, lighter, darker, a plain ground. */
export function ChangesScreen({ studio, paintingId }: { studio: Studio; paintingId: string }) {
  const tools: ChangeTools = {
    change: useSignal<Change>('leave-out'),
    hand: useSignal<'round' | 'brush'>('round'),
    brush: useSignal(0.06),
    view: useSignal<ChangesView>('colour'),
    pointed: useSignal<string | null>(null),
  };
  const hintId = useId();
  const draw = (path: readonly Point[]): void => {
    const painting = studio.painting.value;
    const brush = tools.hand.value === 'brush' ? tools.brush.value : 0;
    if (!painting || (brush === 0 && isSlip(path))) return;
    tools.pointed.value = null;
    const stroke = strokeOnPhoto(painting.reference, { path, brush });
    void studio.decide({ kind: 'alter', change: tools.change.value, ...stroke });
  };
  return (
    <DecidePlace
      studio={studio}
      paintingId={paintingId}
      name="changes"
      title="Paint it otherwise"
      kinds={['alter', 'ground']}
      picture={(now) => (
        <ChangesPicture
          now={now}
          changes={changesOf(now.painting)}
          tools={tools}
          hintId={hintId}
          onStroke={draw}
        />
      )}
      panel={({ painting }) => (
        <ChangesPanel
          studio={studio}
          painting={painting}
          changes={changesOf(painting)}
          tools={tools}
          hintId={hintId}
        />
      )}
    />
  );
}
