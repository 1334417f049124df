import { encodeAs } from './encodeAs';

const lines = (rows: readonly string[], end = '\n') => rows.join(end) + end;

/** Invented exports of invented workshops: each has one or more of the habits that make a sheet hard to read. */
export const workshopSheets = {
  /** Two header rows with groups over them, a title in the first cell, decimal commas, a line of totals. */
  grouped: encodeAs(
    lines(
      [
        'Werk Süd;;;;Befund;;;;;;Zusammenbau;;;;;;Notiz',
        'Motor;Lader-Nr.;Datum;Stunden;Längsspiel;Schlag;Spalt Turbine 12 Uhr;3 Uhr;6 Uhr;9 Uhr;Längsspiel;Schlag;Spalt Turbine 12 Uhr;3 Uhr;6 Uhr;9 Uhr;',
        'M7-B;Q-4410;07.05.2018;9.310;0,41;0,03;0,72;0,69;0,66;0,7;0,2;0,02;0,7;0,69;0,67;0,68;Lager getauscht',
        'M7-B;Q-4410;18.09.2020;20.050;0,38;0,04;0,73;0,70;0,66;0,71;;;0,7;0,69;0,66;0,69;nachher nicht gemessen',
        'M8-A;Q-4417;31.06.2019;10.120;0,4;0,02;0,75;0,7;0,68;0,71;0,19;0,01;0,71;0,69;0,68;0,69;',
        'Gesamt;;;;;;;;;;;;;;;;',
      ],
      '\r\n',
    ),
    'windows-1252',
  ),
  /** One row a reading, a position letter, a unit of measure with a slash and digits in the header. */
  longForm: encodeAs(
    lines([
      'rotor,done,hours,f_or_l,item,where,reading (1/100 mm),fitter',
      'P-77,2019-06-03,8720,F,axial play,,33,ab',
      'P-77,2019-06-03,8720,F,turb tip,T,61,ab',
      'P-77,2019-06-03,8720,F,turb tip,R,58,ab',
      'P-77,2019-06-03,8720,L,axial play,,17.5,ab',
      'P-77,2021-01-12,0,F,axial play,,3.1,cd',
    ]),
    'UTF-8',
  ),
  /** Thousands commas and a line break within quotes, marks, bounds, ranges, words, a formula. */
  textInCells: encodeAs(
    lines([
      'Rotor,Date,Hours,Play found (mm),Runout found (mm),Play left (mm),Remarks',
      'R-501,2017-04-09,"11,300",0.61*,<0.03,0.25,"* scored collar, see sketch"',
      'R-501,2019-10-30,"24,810",0.50-0.55,0.04,n/a,',
      'R-502,2017-05-02,12040H,OK,=2+2,0.27,"plate ""C"" used,\nreplace next time"',
      'R-503,45310,13990,0.57,0.03,,',
    ]),
    'UTF-8 marked',
  ),
  /** UTF-16 with tabs, no-break spaces between thousands, a minus sign that is no hyphen. */
  wide16: encodeAs(
    lines([
      'unit\tdate\thours\trunout left µm\trunout found µm',
      'T-9\t2015-02-27\t12\u00a0880\t15\t35',
      'T-9\t2017-03-01\t25\u00a0110\t\u221210\t',
    ]),
    'UTF-16 LE marked',
  ),
  /** Title, notes and a blank line first; the header again on the second page; page numbers; notes under the table. */
  printed: encodeAs(
    lines([
      'Overhaul list 2016 to 2021',
      'Workshop: East; printed by: office',
      '',
      'Unit;Date;Hours;Play found;Play left',
      ';;h;mm;mm',
      'N-30;2016-02-11;9900;0,44;0,21',
      'N-31;2016-03-14;10100;0,47;0,22',
      'Page 1 of 2;;;;',
      'UNIT;DATE;HOURS;PLAY FOUND;PLAY LEFT',
      ';;h;mm;mm',
      'N-30;2018-02-20;20250;0,46;0,2',
      'Average;;13416;0,457;0,21',
      '',
      'Play measured with a dial gauge at the compressor end, casing cold;;;;',
      'Printed on 2021-12-01;;;;',
    ]),
    'UTF-8',
  ),
} as const;
