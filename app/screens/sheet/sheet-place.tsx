import { useEffect, useRef, useState } from 'preact/hooks';
import type { PhotoFacts } from '../../../workers/analysis-api.ts';
import type { App } from '../../state/create-app.ts';
import { Waiting } from '../common/waiting.tsx';
import { SheetScreen } from './sheet-screen.tsx';

/** Opens the photo for the sheet screen and hands on what was decided there. */
export function SheetPlace({ app, paintingId }: { app: App; paintingId: string }) {
  const [facts, setFacts] = useState<PhotoFacts | null>(null);
  const painting = app.studio.painting.value;
  const photoId = painting?.id === paintingId ? painting.reference.photoId : null;
  useEffect(() => {
    if (!photoId) return;
    const leaving = new AbortController();
    let opened: PhotoFacts | null = null;
    void app.studio.openPhoto(leaving.signal).then((found) => {
      opened = found;
      setFacts(found);
    });
    return () => {
      leaving.abort();
      opened?.preview.close();
    };
  }, [app, photoId]);
  const before = useRef(painting?.reference);
  if (painting && !before.current) before.current = painting.reference;
  const done = (): void => app.router.go({ screen: 'look', paintingId });
  const cancel = (): void => {
    const was = before.current;
    if (was) void app.studio.setReference(was.sheet, was.crop);
    done();
  };
  if (!painting || !facts) return <Waiting studio={app.studio} />;
  return (
    <SheetScreen
      preview={facts.preview}
      photo={facts}
      sheet={painting.reference.sheet}
      crop={painting.reference.crop}
      onChange={(sheet, crop) => void app.studio.setReference(sheet, crop)}
      onDone={done}
      onCancel={cancel}
    />
  );
}
