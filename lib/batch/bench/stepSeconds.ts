import { defaultSparesSettings } from '../../analysis/demand/defaultSparesSettings';
import { usualDriftSettings } from '../../analysis/drift/driftResult';
import { FleetAnswers } from '../../analysis/engine/FleetAnswers';
import { openAnalysis } from '../../analysis/openAnalysis';
import { openNodeDatabase } from '../../store/nodeDatabase';
import { readDataFile } from '../partitions/readDataFile';
import { readDataFolder } from '../partitions/readDataFolder';

/** Seconds of each step of a whole analysis in one process. */
export interface StepSeconds {
  readonly import_s: number;
  readonly fit_s: number;
  readonly forecasts_s: number;
  readonly sisters_s: number;
  readonly signals_s: number;
  readonly spares_s: number;
}

/** Analyses a folder's files as one fleet and takes the time of each step. */
export async function stepSeconds(folder: string): Promise<StepSeconds> {
  const { shared, parts } = await readDataFolder(folder);
  const listed = [...shared, ...parts.flatMap(({ files }) => files)];
  const files = await Promise.all(listed.map(readDataFile));
  const database = await openNodeDatabase();
  const begun = performance.now();
  let [fitting, forecasting] = [Number.NaN, Number.NaN];
  const analysis = await openAnalysis(
    await database.connect(),
    files,
    'own',
    { asOf: null, groupBy: 'frame' },
    async ({ step }) => {
      if (Number.isNaN(fitting) && step.startsWith('Fitting')) fitting = performance.now();
      if (Number.isNaN(forecasting) && step.startsWith('Forecasting')) forecasting = performance.now();
    },
  );
  const opened = performance.now();
  const answers = new FleetAnswers(analysis, async () => {});
  const taken = async (ask: () => Promise<unknown>) => {
    const start = performance.now();
    await ask();
    return (performance.now() - start) / 1000;
  };
  const seconds = {
    import_s: (fitting - begun) / 1000,
    fit_s: (forecasting - fitting) / 1000,
    forecasts_s: (opened - forecasting) / 1000,
    sisters_s: await taken(() => answers.sisters('frame')),
    signals_s: await taken(() => answers.drift(usualDriftSettings)),
    spares_s: await taken(() => answers.spares(defaultSparesSettings)),
  };
  await database.close();
  return seconds;
}
