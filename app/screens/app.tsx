import { useEffect, useRef } from 'preact/hooks';
import type { App as AppState } from '../state/create-app.ts';
import { lazyScreen } from '../ui/layout/lazy-screen.tsx';
import { Notices } from '../ui/layout/waiting.tsx';
import { StartScreen } from './start/start-screen.tsx';

const AboutScreen = lazyScreen(() => import('./about/about-screen.tsx').then((m) => m.AboutScreen));
const BoxPlace = lazyScreen(() => import('./box/box-screen.tsx').then((m) => m.BoxPlace));
const CameraPlace = lazyScreen(() =>
  import('./camera/camera-screen.tsx').then((m) => m.CameraPlace),
);
const ChangesScreen = lazyScreen(() =>
  import('./changes/changes-screen.tsx').then((m) => m.ChangesScreen),
);
const ChartScreen = lazyScreen(() => import('./chart/chart-screen.tsx').then((m) => m.ChartScreen));
const ChooseScreen = lazyScreen(() =>
  import('./choose/choose-screen.tsx').then((m) => m.ChooseScreen),
);
const ColoursScreen = lazyScreen(() =>
  import('./colours/colours-screen.tsx').then((m) => m.ColoursScreen),
);
const ComparePlace = lazyScreen(() =>
  import('./compare/compare-screen.tsx').then((m) => m.ComparePlace),
);
const CopiesScreen = lazyScreen(() =>
  import('./copies/copies-screen.tsx').then((m) => m.CopiesScreen),
);
const DrawingScreen = lazyScreen(() =>
  import('./drawing/drawing-screen.tsx').then((m) => m.DrawingScreen),
);
const EaselPlace = lazyScreen(() => import('./easel/easel-screen.tsx').then((m) => m.EaselPlace));
const EdgesScreen = lazyScreen(() => import('./edges/edges-screen.tsx').then((m) => m.EdgesScreen));
const HuesScreen = lazyScreen(() => import('./hues/hues-screen.tsx').then((m) => m.HuesScreen));
const MeasurePlace = lazyScreen(() =>
  import('./measure/measure-screen.tsx').then((m) => m.MeasurePlace),
);
const PaintsScreen = lazyScreen(() =>
  import('./paints/paints-screen.tsx').then((m) => m.PaintsScreen),
);
const PlanPageScreen = lazyScreen(() =>
  import('./plan-page/plan-page-screen.tsx').then((m) => m.PlanPageScreen),
);
const fetchLook = () => import('./look/look-screen.tsx').then((m) => m.LookScreen);
const LookScreen = lazyScreen(fetchLook);
const PlanScreen = lazyScreen(() => import('./plan/plan-screen.tsx').then((m) => m.PlanScreen));
const RecordScreen = lazyScreen(() =>
  import('./record/record-screen.tsx').then((m) => m.RecordScreen),
);
const SheetPlace = lazyScreen(() => import('./sheet/sheet-screen.tsx').then((m) => m.SheetPlace));
const SubjectScreen = lazyScreen(() =>
  import('./subject/subject-screen.tsx').then((m) => m.SubjectScreen),
);
const WhitesScreen = lazyScreen(() =>
  import('./whites/whites-screen.tsx').then((m) => m.WhitesScreen),
);

export function App({ app }: { app: AppState }) {
  // The study comes next, whichever way a picture comes in: fetched ahead, and said when it is missing.
  useEffect(() => void fetchLook().catch(() => undefined), []);
  useEffect(() => {
    const { router, studio } = app;
    const painting = (): string =>
      'paintingId' in router.route.value ? (studio.painting.value?.title ?? '') : '';
    void import('../ui/layout/follow-screens.ts').then(
      ({ followScreens }) => followScreens(document.body, painting),
      () => undefined, // not on the device yet: the next time
    );
  }, [app]);
  return (
    <>
      <Screen app={app} />
      <Notices app={app} />
    </>
  );
}

function Screen({ app }: { app: AppState }) {
  const route = app.router.route.value;
  const paintingId = 'paintingId' in route ? route.paintingId : null;
  useEffect(() => {
    if (paintingId) void app.studio.open(paintingId);
    if (!paintingId || route.screen === 'sheet') app.studio.leave();
  }, [app, paintingId, route.screen]);

  const shown = useRef(route);
  useEffect(() => {
    if (shown.current === route) return;
    shown.current = route;
    scrollTo(0, 0); // the eye starts at the top of a new screen
  }, [route]);

  if (route.screen === 'start') return <StartScreen app={app} />;
  if (route.screen === 'camera') return <CameraPlace app={app} />;
  if (route.screen === 'choose') return <ChooseScreen app={app} />;
  if (route.screen === 'about') return <AboutScreen store={app.paintNeeds.store} />;
  if (route.screen === 'copies') return <CopiesScreen {...app.copyNeeds} what={route.what ?? ''} />;
  if (route.screen === 'box') return <BoxPlace app={app} />;
  if (route.screen === 'measure') return <MeasurePlace app={app} paintId={route.paintId} />;
  const { studio, easel } = app;
  const paintingProps = { studio, paintingId: route.paintingId };
  switch (route.screen) {
    case 'look':
      return (
        <LookScreen {...paintingProps} onSmallStudy={app.smallStudyOf} toldOnce={app.toldOnce} />
      );
    case 'sheet':
      return <SheetPlace app={app} paintingId={route.paintingId} />;
    case 'subject':
      return <SubjectScreen {...paintingProps} />;
    case 'whites':
      return <WhitesScreen {...paintingProps} />;
    case 'edges':
      return <EdgesScreen {...paintingProps} />;
    case 'colours':
      return <ColoursScreen {...paintingProps} />;
    case 'changes':
      return <ChangesScreen {...paintingProps} />;
    case 'hues':
      return <HuesScreen {...paintingProps} ownBox={app.ownBox} />;
    case 'paints':
      return <PaintsScreen {...paintingProps} ownBox={app.ownBox} calls={app.paintCalls} />;
    case 'plan':
      return (
        <PlanScreen
          {...paintingProps}
          ownBox={app.ownBox}
          ownAir={app.ownAir}
          handed={app.paintNeeds}
          calls={app.paintCalls}
          begun={easel.desk.value?.paintingId === route.paintingId}
        />
      );
    case 'chart':
      return <ChartScreen {...paintingProps} calls={app.paintCalls} />;
    case 'drawing':
      return <DrawingScreen {...paintingProps} calls={app.paintCalls} />;
    case 'plan-page':
      return <PlanPageScreen {...paintingProps} calls={app.paintCalls} />;
    case 'easel':
      return <EaselPlace app={app} paintingId={route.paintingId} />;
    case 'compare':
      return <ComparePlace app={app} paintingId={route.paintingId} />;
    case 'record':
      return (
        <RecordScreen
          {...{ easel, keepsakes: app.paintNeeds.store, paintingId: route.paintingId }}
          calls={app.paintCalls}
          sessionId={route.sessionId}
        />
      );
  }
}
