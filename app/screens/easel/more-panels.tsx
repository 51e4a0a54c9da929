import type { Easel } from '../../state/easel.ts';
import type { EaselSenses } from '../../state/easel-senses.ts';
import type { Keepsakes } from '../../state/keepsakes.ts';
import { MixPanel } from './mix-panel.tsx';
import { NotePanel } from './note-panel.tsx';
import { PacePanel } from './pace-panel.tsx';
import { PhotoPanel } from './photo-panel.tsx';
import { PractisePanel } from './practise-panel.tsx';
import { SensesPanel } from './senses-panel.tsx';
import { TakeBackPanel } from './take-back-panel.tsx';
import { TroublePanel } from './trouble-panel.tsx';
import { WeatherPanel } from './weather-panel.tsx';

interface MorePanelsProps {
  easel: Easel;
  senses: EaselSenses;
  keepsakes: Keepsakes;
}

/** All that stands in the sheet of further actions, what is needed soonest first. */
export function MorePanels({ easel, senses, keepsakes }: MorePanelsProps) {
  const { sessionId } = easel.desk.value ?? {};
  return (
    <>
      <TakeBackPanel easel={easel} />
      <div>
        {easel.running.value && (
          <>
            <TroublePanel easel={easel} />
            <PractisePanel easel={easel} />
            <WeatherPanel easel={easel} />
            <PacePanel easel={easel} />
            <MixPanel easel={easel} />
          </>
        )}
        {sessionId !== undefined && (
          <>
            <PhotoPanel easel={easel} keepsakes={keepsakes} sessionId={sessionId} />
            <NotePanel easel={easel} keepsakes={keepsakes} sessionId={sessionId} />
          </>
        )}
      </div>
      <SensesPanel senses={senses} />
    </>
  );
}
