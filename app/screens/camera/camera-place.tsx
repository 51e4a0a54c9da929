import type { App } from '../../state/create-app.ts';
import { CameraScreen } from './camera-screen.tsx';

/** The live camera; what it takes goes the same way in as a chosen photo. */
export function CameraPlace({ app }: { app: App }) {
  return (
    <CameraScreen
      onPhoto={(photo) => void app.intake.take(photo)}
      onChooseFile={(file) => void app.intake.take(file)}
      onCancel={() => app.router.go({ screen: 'start' })}
    />
  );
}
