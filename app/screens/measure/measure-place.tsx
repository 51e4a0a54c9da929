import type { App } from '../../state/create-app.ts';
import { createPaintMeasuring } from '../../state/paint-measuring.ts';
import { madeOnce } from '../common/made-once.ts';
import { MeasureScreen } from './measure-screen.tsx';

const measuringOf = madeOnce(createPaintMeasuring);

/** The measuring of a paint: it is looked after only from when it is first opened. */
export function MeasurePlace({ app, paintId }: { app: App; paintId: string }) {
  return (
    <MeasureScreen
      ownBox={app.ownBox}
      measuring={measuringOf(app.paintNeeds)}
      paintId={paintId}
      onKept={() => app.router.go({ screen: 'box' })}
    />
  );
}
