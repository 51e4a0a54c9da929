import type { Studio } from '../../state/studio.ts';
import { DecidePlace } from '../common/decide-place.tsx';
import { useWhites } from './use-whites.ts';
import { WhitesPanel } from './whites-panel.tsx';
import { WhitesPicture } from './whites-picture.tsx';

/** What stays bare paper, how each white is kept, and a brush to keep more or fewer. */
export function WhitesScreen({ studio, paintingId }: { studio: Studio; paintingId: string }) {
  const state = useWhites(studio);
  return (
    <DecidePlace
      studio={studio}
      paintingId={paintingId}
      name="whites"
      title="Whites to keep"
      kinds={['white', 'white-way']}
      picture={(now) => <WhitesPicture studio={studio} now={now} state={state} />}
      panel={(now) => <WhitesPanel studio={studio} now={now} state={state} />}
    />
  );
}
