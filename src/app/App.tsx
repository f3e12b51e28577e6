import { lazy, type ReactNode, Suspense, useEffect, useState } from 'react';
import { CommandBox } from './CommandBox.tsx';
import { ContextMenu } from './ContextMenu.tsx';
import { useApp, useUi } from './context.ts';
import { Explainer } from './explain/Explainer.tsx';
import { DropFiles } from './jobs/DropFiles.tsx';
import { JobBar } from './jobs/JobBar.tsx';
import { listenForShortcuts } from './keyboard.ts';
import { LiveRegion } from './LiveRegion.tsx';
import { NoticeDialog } from './NoticeDialog.tsx';
import { UpdateBar } from './offline/UpdateBar.tsx';
import { SidePanel } from './panel/SidePanel.tsx';
import { ResultsStrip } from './ResultsStrip.tsx';
import { Sheets } from './Sheets.tsx';
import { SkipLinks } from './SkipLinks.tsx';
import { ToolRail } from './ToolRail.tsx';
import { TopBar } from './TopBar.tsx';
import { Underlays } from './underlay/Underlays.tsx';

/** The desk. Its shortcuts listen after the sheets' own keys, which come first. */
export function Desk() {
  const app = useApp();
  const shortcuts = useUi((state) => state.shortcuts);
  const settings = useUi((state) => state.settings);
  const table = useUi((state) => state.table);
  const charts = useUi((state) => state.charts);
  const parts = useUi((state) => state.parts);
  const lab = useUi((state) => state.lab !== null);
  const comparing = useUi((state) => state.comparing);
  const prices = useUi((state) => state.prices);
  const searching = useUi((state) => state.routeSearch);
  const faults = useUi((state) => state.faults);
  const rules = useUi((state) => state.rules);
  const jobs = useUi((state) => state.jobs !== null);
  const versions = useUi((state) => state.versions);
  const savingTemplate = useUi((state) => state.savingTemplate);
  const drawing = useUi((state) => state.drawing);
  const jobSheet = useUi((state) => state.jobSheet);
  const printing = useUi((state) => state.printing !== null);
  const help = useUi((state) => state.help !== null);
  const guide = useUi((state) => state.guide !== null);
  const sharing = useUi((state) => state.sharing !== null);
  useEffect(() => listenForShortcuts(app), [app]);
  return (
    <Explainer>
      <div className="desk">
        <SkipLinks />
        <Asked open={guide} box={<Guide />} />
        <TopBar />
        <div className="news">
          <UpdateBar />
          <JobBar />
        </div>
        <ToolRail />
        <Sheets />
        {searching ? (
          <Suspense>
            <RouteSearchPanel />
          </Suspense>
        ) : faults ? (
          <Suspense>
            <FaultPanel />
          </Suspense>
        ) : (
          <SidePanel />
        )}
        {table && (
          <Suspense>
            <RouteTable />
          </Suspense>
        )}
        {charts && !table && (
          <Suspense>
            <ChartsDock />
          </Suspense>
        )}
        {parts && !table && !charts && (
          <Suspense>
            <PartsDock />
          </Suspense>
        )}
        <ResultsStrip />
        <CommandBox />
        <ContextMenu />
        <Underlays />
        <DropFiles />
        <NoticeDialog />
        <LiveRegion />
        <Asked open={shortcuts} box={<ShortcutsDialog />} />
        <Asked open={help} box={<HelpView />} />
        <Asked open={sharing} box={<ShareDialog />} />
        <Asked open={settings} box={<SettingsDialog />} />
        <Asked open={comparing} box={<CompareView />} />
        <Asked open={lab} box={<BendLab />} />
        <Asked open={prices} box={<PricesDialog />} />
        <Asked open={rules} box={<RulesDialog />} />
        <Asked open={drawing} box={<DrawingDialog />} />
        <Asked open={jobs} box={<JobsView />} />
        <Asked open={versions} box={<VersionsDialog />} />
        <Asked open={savingTemplate} box={<TemplateDialog />} />
        <Asked open={jobSheet} box={<JobSheetDialog />} />
        <Asked open={printing} box={<PrintView />} />
      </div>
    </Explainer>
  );
}

const Guide = lazy(() => import('./guide/Guide.tsx'));
const HelpView = lazy(() => import('./help/HelpView.tsx'));
const ShareDialog = lazy(() => import('./share/ShareDialog.tsx'));
const RouteSearchPanel = lazy(() => import('./route-search/RouteSearchPanel.tsx'));
const FaultPanel = lazy(() => import('./faults/FaultPanel.tsx'));
const DrawingDialog = lazy(() => import('./drawing-out/DrawingDialog.tsx'));
const JobSheetDialog = lazy(() => import('./job-sheet/JobSheetDialog.tsx'));
const JobsView = lazy(() => import('./jobs/JobsView.tsx'));
const VersionsDialog = lazy(() => import('./jobs/VersionsDialog.tsx'));
const TemplateDialog = lazy(() => import('./jobs/TemplateDialog.tsx'));
const PrintView = lazy(() => import('./print/PrintView.tsx'));
const RulesDialog = lazy(() => import('./codes/RulesDialog.tsx'));
const RouteTable = lazy(() => import('./table/RouteTable.tsx'));
const ChartsDock = lazy(() => import('./charts/ChartsDock.tsx'));
const PartsDock = lazy(() => import('./parts-list/PartsDock.tsx'));
const BendLab = lazy(() => import('./lab/BendLab.tsx'));
const CompareView = lazy(() => import('./compare/CompareView.tsx'));
const PricesDialog = lazy(() => import('./prices/PricesDialog.tsx'));
const SettingsDialog = lazy(() => import('./settings/SettingsDialog.tsx'));
const ShortcutsDialog = lazy(() => import('./ShortcutsDialog.tsx'));

/** A box whose code comes when it is first asked for. */
function Asked({ open, box }: { open: boolean; box: ReactNode }) {
  const [asked, setAsked] = useState(open);
  if (open && !asked) setAsked(true);
  return asked ? <Suspense>{box}</Suspense> : null;
}
