# The peer of the bench: what an engineer at home in R would write for the same files. data.table cuts runs, lme4 fits the
# wear model to every sister group and series, and each unit's own line meets its limit. No intervals, no checks, no charts.
# Rscript peer.R FOLDER CORES FITS_CSV [tight]
# Prints seconds: reading and cutting, fitting and forecasting, all. `tight` stops lme4's search later, to compare results.
suppressMessages({
  library(data.table)
  library(lme4)
  library(parallel)
})
arguments <- commandArgs(trailingOnly = TRUE)
folder <- arguments[1]
cores <- as.integer(arguments[2])
fits_file <- arguments[3]
stopping <- if (length(arguments) > 3) list(xtol_abs = 1e-9, ftol_abs = 1e-9) else list()
control <- lmerControl(calc.derivs = FALSE, optCtrl = stopping, check.conv.singular = "ignore")
setDTthreads(cores)
begun <- proc.time()[["elapsed"]]

read_parts <- function(name) {
  rbindlist(lapply(list.files(folder, name, recursive = TRUE, full.names = TRUE), fread, na.strings = ""))
}
units <- read_parts("^units.csv$")
overhauls <- read_parts("^overhauls.csv$")
readings <- read_parts("^readings.csv$")
plan <- read_parts("^plan.csv$")
limits <- fread(file.path(folder, "limits.csv"))

# Runs: thrust play goes on until its bearing is fitted, everything else starts anew at every assembly.
setorder(overhauls, unit, date)
overhauls[, place := seq_len(.N), by = unit]
overhauls[, bearing := !is.na(fitted)]
cut_runs <- function(resets) {
  runs <- overhauls[, .(overhaul, unit, unit_hours, reset = resets)]
  runs[, run_left := cumsum(reset), by = unit]
  runs[, run_found := run_left - reset]
  runs[, start_left := nafill(fifelse(reset, as.numeric(unit_hours), NA_real_), "locf"), by = unit]
  runs[is.na(start_left), start_left := 0]
  runs[, start_found := shift(start_left, fill = 0), by = unit]
  runs
}
placed <- function(series, runs) {
  series <- merge(series, runs, by = "overhaul")
  series[, run := fifelse(stage == "found", run_found, run_left)]
  series[, start := fifelse(stage == "found", start_found, start_left)]
  series[, .(series, unit, run, x = (unit_hours - start) / 1e4, y = value)]
}
single <- readings[is.na(clock), .(overhaul, stage, series = characteristic, value)]
sets <- dcast(readings[!is.na(clock)], overhaul + characteristic + stage ~ paste0("c", clock), value.var = "value")
sets[, `:=`(
  largest = pmax(c12, c3, c6, c9), smallest = pmin(c12, c3, c6, c9), mean = (c12 + c3 + c6 + c9) / 4,
  offset = sqrt(((c3 - c9) / 2)^2 + ((c12 - c6) / 2)^2)
)]
clocks <- melt(sets, c("overhaul", "characteristic", "stage"), c("largest", "smallest", "mean", "offset"))
clocks <- clocks[, .(overhaul, stage, series = paste0(characteristic, "_", variable), value)]
by_assembly <- cut_runs(rep(TRUE, nrow(overhauls)))
by_bearing <- cut_runs(overhauls$bearing)
data <- rbind(
  placed(single[series == "thrust_play"], by_bearing),
  placed(rbind(single[series != "thrust_play"], clocks), by_assembly)
)
data <- merge(data, units[, .(unit, group = frame)], by = "unit")
data[, run := paste(unit, run)]
now <- merge(overhauls[, .(hours_last = last(unit_hours), engine = last(engine)), by = unit], plan, by = "engine")
cut_s <- proc.time()[["elapsed"]] - begun

fit_one <- function(rows) {
  fit <- lmer(y ~ x + (1 + x || unit) + (1 + x || run), rows, REML = TRUE, control = control)
  sds <- as.data.frame(VarCorr(fit))
  sd_of <- function(group, variable) sum(sds$sdcor[sub("\\.1$", "", sds$grp) == group & sds$var1 %in% variable])
  effects <- ranef(fit)
  own <- rows[, .(run = run[which.max(as.integer(sub(".* ", "", run)))]), by = unit]
  start <- fixef(fit)[[1]] + effects$unit[own$unit, "(Intercept)"] + effects$run[own$run, "(Intercept)"]
  slope <- fixef(fit)[[2]] + effects$unit[own$unit, "x"] + effects$run[own$run, "x"]
  list(
    fit = data.table(
      group = rows$group[1], series = rows$series[1], intercept_mm = fixef(fit)[[1]], slope_mm_per_10kh = fixef(fit)[[2]],
      sd_noise_mm = sigma(fit), sd_start_mm = sqrt(sd_of("unit", "(Intercept)")^2 + sd_of("run", "(Intercept)")^2),
      sd_slope_unit = sd_of("unit", "x"), sd_slope_run = sd_of("run", "x"), reml_criterion = REMLcrit(fit)
    ),
    lines = data.table(group = rows$group[1], series = rows$series[1], unit = own$unit, start, slope)
  )
}
results <- mclapply(split(data, by = c("group", "series")), fit_one, mc.cores = cores)
fits <- rbindlist(lapply(results, `[[`, "fit"))
lines <- rbindlist(lapply(results, `[[`, "lines"))
lines <- merge(lines, limits[, .(group = frame, series, limit)], by = c("group", "series"))
lines <- merge(lines, now[, .(unit, hours_now, hours_last)], by = "unit")
lines[, hours_to_limit := (limit - start) / slope * 1e4 - (hours_now - hours_last)]
fwrite(fits, fits_file)
all_s <- proc.time()[["elapsed"]] - begun
cat(cut_s, all_s - cut_s, all_s, nrow(lines), "\n")
