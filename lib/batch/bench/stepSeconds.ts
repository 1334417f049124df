import { defaultSparesSettings } from '../../analysis/demand/defaultSparesSettings';
import { usualDriftSettings } from '../../analysis/drift/driftResult';
import { FleetAnswers } from '../../analysis/engine/FleetAnswers';
import { openAnalysis } from '../../analysis/openAnalysis';
import { sisterRatios } from '../../analysis/sisters/sisterRatios';
import { openNodeDatabase } from '../../store/nodeDatabase';
import { readDataFile } from '../partitions/readDataFile';
import { readDataFolder } from '../partitions/readDataFolder';

/** Seconds of processor time of each step of a whole analysis in one process, the database's included. */
export interface StepSeconds {
  readonly import_s: number;
  readonly fit_s: number;
  readonly forecasts_s: number;
  readonly sisters_s: number;
  readonly signals_s: number;
  readonly spares_s: number;
}

/** Processor time of this process so far, s: what else the machine does shows in it least. */
function processor_s(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

/** Analyses a folder's files as one fleet and takes the time of each step. */
export async function stepSeconds(folder: string): Promise<StepSeconds> {
  const { shared, parts } = await readDataFolder(folder);
  const listed = [...shared, ...parts.flatMap(({ files }) => files)];
  const files = await Promise.all(listed.map(readDataFile));
  const database = await openNodeDatabase();
  const begun = processor_s();
  let [fitting, forecasting] = [Number.NaN, Number.NaN];
  const analysis = await openAnalysis(
    await database.connect(),
    files,
    'own',
    { asOf: null, groupBy: 'frame', withoutQuarters: true },
    async ({ step }) => {
      if (Number.isNaN(fitting) && step.startsWith('Fitting')) fitting = processor_s();
      if (Number.isNaN(forecasting) && step.startsWith('Forecasting')) forecasting = processor_s();
    },
  );
  const opened = processor_s();
  const answers = new FleetAnswers(analysis, async () => {});
  const taken = async (ask: () => Promise<unknown>) => {
    const start = processor_s();
    await ask();
    return processor_s() - start;
  };
  const seconds = {
    import_s: fitting - begun,
    fit_s: forecasting - fitting,
    forecasts_s: opened - forecasting,
    sisters_s: await taken(async () => sisterRatios(analysis.fits.values())),
    signals_s: await taken(() => answers.drift(usualDriftSettings)),
    spares_s: await taken(() => answers.spares(defaultSparesSettings)),
  };
  await database.close();
  return seconds;
}
