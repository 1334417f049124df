import type { Words } from './concepts';

/** English trade words and abbreviations. */
export const english: Words = {
  thrust_play:
    'thrust play, thrust clearance, thrust bearing clearance, thrust bearing play, thrust float, end float, end play, endplay, axial play, axial clearance, axial float, axial movement, axial gap, rotor float, shaft float, thrust brg clearance, thrust brg play, thr play',
  thrust_hint: 'axial, thrust',
  runout:
    'runout, run out, t i r, shaft runout, shaft run out, shaft end runout, shaft end run out, tir, total indicator reading, total indicated runout, concentricity, eccentricity, shaft deflection, wobble',
  nut_stand_out:
    'nut stand out, nut standout, nut protrusion, nut height, nut projection, locknut stand out, stand out, standout, lock nut stand out',
  tip: 'tip, tip clearance, tip clearances, tip gap, tip clr, blade tip, blade tip clearance, blade clearance, shroud clearance, tip to shroud, tipgap',
  gap: 'clearance, clearances, gap, clr, clear, radial clearance, radial gap',
  compressor:
    'compressor, compr, comp, cmp, impeller, compressor wheel, compressor end, compressor side, blower, comp end, comp side, air end, inducer',
  turbine:
    'turbine, turb, trb, turbine wheel, turbine end, turbine side, turb end, turb side, gas end, exhaust end',
  found:
    'found, as found, asfound, af, f, before, before dismantling, before disassembly, before stripping, before strip, before opening, dismantling, disassembly, stripping, strip down, incoming, on arrival, arrival, as received, received, pre, on opening',
  left: 'as left, asleft, al, after, after assembly, after reassembly, after overhaul, reassembly, assembly, assembled, reassembled, outgoing, post, final, rebuilt, on closing, closing, as built, as fitted',
  left_or_side: 'left, l',
  '12': 'top, t, upside, up, uppermost',
  '3': 'right, r, right hand, rh, right side, right hand side, rhs',
  '6': 'bottom, b, btm, bot, down',
  '9': 'left hand, lh, left side, left hand side, lhs',
  clock_word: 'o clock, oclock, clock, hrs, h, hour, o c',
  seen_from: 'seen from, viewed from, view from, looking from, from, seen, viewed',
  hours:
    'hours, hour, hrs, hr, h, running hours, run hours, run h, run hrs, running hrs, operating hours, op hours, service hours, run time, hour meter, meter, counter, running time',
  engine:
    'engine, eng, genset, generator set, main engine, diesel, motor, engine name, prime mover, generator',
  unit: 'unit, turbocharger, turbo charger, turbo, tc, t c, rotor, rotating assembly, cartridge, chra, unit id, asset, rotor assembly',
  serial: 'serial, serial no, serial number, s n, sn, ser no, ser, serial nr',
  number: 'no, number, num, nr, id, code, n, name',
  frame: 'frame, frame size, size, model, frame type',
  type: 'type',
  site: 'site, station, power station, plant, ship, vessel, location, place, power plant',
  bank: 'bank, side, cylinder bank, cyl bank',
  workshop:
    'workshop, shop, by, done by, ws, measured by, contractor, service shop, service station, performed by, overhauled by',
  kind: 'kind, reason, cause, kind of overhaul, reason for overhaul, planned unplanned, scheduled unscheduled',
  planned: 'planned, scheduled, routine, periodic',
  unplanned: 'unplanned, unscheduled, breakdown, failure, forced, corrective, emergency, damage',
  fitted:
    'fitted, parts fitted, new parts, parts replaced, parts renewed, renewed, replaced, replacements, spares fitted, spares used, parts changed, parts used',
  remarks: 'remarks, remark, rem, note, notes, comment, comments, observation, observations, findings',
  revision: 'revision, rev, version, issue, revision no, rev no',
  overhaul:
    'overhaul, overhaul no, overhaul id, job, job no, work order, wo, report no, report, order no, inspection, o h',
  characteristic:
    'characteristic, what, measurement, measured quantity, parameter, item measured, item, dimension, check, check point, measuring point',
  stage: 'stage, condition, state, phase, status, before after, found or left',
  position:
    'position, pos, clock position, location on wheel, clock pos, o clock position, place of measurement',
  value: 'value, val, reading, measured value, measured, result, actual, readings',
  uom: 'uom, unit of measure, units of measure, units, measuring unit, unit of measurement, u o m',
  lower: 'goes, go, passes, feeler goes, lower bound, lower end',
  upper:
    'does not go, doesn t go, does not pass, no go, nogo, not go, not goes, feeler does not go, upper bound, upper end',
  date: 'date, dated, day, when, overhaul date, inspection date, date of overhaul, job date',
  extreme: 'max, min, maximum, minimum, largest, smallest, average, mean, avg, lowest, highest',
  other:
    'limit, limits, allowable, permissible, allowed, tolerance, tol, nominal, target, spec, specification, design, previous, next, due, planned date, since, interval, per year, difference, diff, delta, change, wear, wear rate, margin, price, cost, value added, amount, total, qty, quantity, description, customer, invoice, gauge, instrument, manufacture, manufactured, manufacturer, made, delivery, ordered, order date, drawing, part no, part number, oil, temperature, pressure, speed, rpm, weight, power, kw, exp, expiry, printed, time of day, page, balance',
  elsewhere:
    'bearing, bearings, brg, journal, seal, seals, labyrinth, nozzle, nozzle ring, diffuser, piston ring, casing, bush, bushing',
  filler:
    'the, of, at, in, on, a, an, and, or, is, for, to, end, shaft, side of, mm, as, position at, not stated, o, m, d, y, yyyy, dd, shown, taken, with, wheel, blade, blades, tc end',
};
