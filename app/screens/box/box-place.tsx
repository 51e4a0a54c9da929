import type { App } from '../../state/create-app.ts';
import { createPaintDrafts } from '../../state/paint-drafts.ts';
import { madeOnce } from '../common/made-once.ts';
import { BoxScreen } from './box-screen.tsx';

const draftsOf = madeOnce(createPaintDrafts);

/** The box with the paints being typed: they are looked after only from when it is first opened. */
export function BoxPlace({ app }: { app: App }) {
  return (
    <BoxScreen
      ownBox={app.ownBox}
      paintDrafts={draftsOf(app.paintNeeds)}
      cameFrom={app.router.cameFrom.value}
    />
  );
}
