import type { Words } from './concepts';

/** Spanish trade words and abbreviations. */
export const spanish: Words = {
  thrust_play:
    'juego axial, holgura axial, juego de empuje, juego longitudinal, huelgo axial, holgura de empuje, flotación axial, juego axial rotor, desplazamiento axial',
  thrust_hint: 'axial, empuje',
  runout:
    'excentricidad, alabeo, descentramiento, descentrado, salto, alabeo eje, salto radial, ovalización eje, desviación eje, concentricidad',
  nut_stand_out:
    'saliente tuerca, saliente de la tuerca, resalte tuerca, sobresaliente tuerca, altura tuerca, resalte de la tuerca',
  tip: 'holgura de punta, holgura punta, holgura en punta, juego de punta, juego punta, holgura álabes, holgura de álabes, holgura punta álabe, holgura de punta de álabe, holgura de punta de álabes, juego en punta de álabes, punta de álabe, punta álabes',
  gap: 'holgura, juego, huelgo, luz, holgura radial, juego radial',
  compressor: 'compresor, lado compresor, rueda compresor, comp, soplante, impulsor, rodete compresor',
  turbine: 'turbina, lado turbina, rueda turbina, turb, rodete turbina',
  found:
    'antes, antes de desmontaje, antes del desmontaje, antes de desmontar, antes de revisión, desmontaje, encontrado, encontrada, como se encontró, al abrir, a la llegada, llegada, al desmontar, al desmontaje',
  left: 'después, después de montaje, después del montaje, después de montar, tras montaje, tras el montaje, tras, montaje, dejado, dejada, como se dejó, al cerrar, al montar, al montaje, salida, final, desp, ensamblaje',
  '12': 'arriba, superior, sup',
  '3': 'derecha, dcha, lado derecho, derecho',
  '6': 'abajo, inferior, inf',
  '9': 'izquierda, izq, izda, lado izquierdo, izquierdo',
  clock_word: 'horas, hora, h, hs',
  seen_from: 'visto desde, vista desde, mirando desde, desde, visto',
  hours:
    'horas, horas de servicio, horas de marcha, horas de funcionamiento, horas servicio, horas marcha, horas funcionamiento, hrs, horas de operación, horómetro, cuentahoras, horas trabajo, contador',
  engine: 'motor, grupo, grupo electrógeno, máquina, motor principal, generador',
  unit: 'turbo, turbocompresor, turbosoplante, turboalimentador, rotor, conjunto rotativo, cartucho, unidad, turbocargador, equipo',
  serial:
    'número de serie, n serie, n de serie, no serie, no de serie, núm serie, núm de serie, serie, num de serie, nro serie, nro de serie',
  number: 'número, núm, nro, código, identificación',
  frame: 'tamaño, modelo, bastidor',
  type: 'tipo',
  site: 'central, planta, buque, barco, emplazamiento, ubicación, sitio, estación',
  bank: 'banco, bancada, lado, línea de cilindros, fila',
  workshop: 'taller, realizado por, hecho por, medido por, contratista',
  kind: 'motivo, tipo de intervención, tipo de revisión, clase, causa, tipo de overhaul',
  planned: 'planificado, planificada, programado, programada, previsto, prevista, rutina',
  unplanned:
    'no planificado, no planificada, no programado, no programada, imprevisto, imprevista, avería, fallo, correctivo',
  fitted:
    'piezas montadas, piezas nuevas, piezas cambiadas, piezas sustituidas, repuestos, repuestos montados, recambios',
  remarks: 'observacion*, nota, notas, comentario, comentarios, obs',
  revision: 'revisión, versión, edición, rev',
  overhaul:
    'orden de trabajo, ot, n ot, parte de trabajo, informe, n informe, intervención, orden, revisión general, trabajo',
  characteristic: 'característica, magnitud, medida, medición, parámetro, punto de medida, cota, qué',
  stage: 'estado, etapa, fase, antes después, momento',
  position: 'posición, pos, posición horaria, punto',
  value: 'valor, lectura, medido, resultado, valor medido, val',
  uom: 'unidad de medida, unidad, unidades, ud medida',
  lower: 'pasa, entra, galga pasa',
  upper: 'no pasa, no entra, galga no pasa',
  date: 'fecha, fecha de revisión, fecha revisión, día, fecha intervención, fecha overhaul, fecha de intervención',
  extreme: 'máximo, mínimo, máx, mín, máxima, mínima, media, promedio',
  other:
    'límite, límites, tolerancia, admisible, permitido, permitida, nominal, desde última, próxima, próximo, anterior, precio, cantidad, cant, coste, costo, cliente, factura, entrega, fabricación, fabricante, instrumento, diferencia, desgaste, temperatura, presión, velocidad, descripción, equilibrado',
  elsewhere: 'cojinete, cojinetes, rodamiento, sello, laberinto, tobera, difusor, carcasa, casquillo, retén',
  filler: 'de, del, la, el, los, las, en, a, y, o, eje, punta, álabes, álabe, rueda, rodete, mm, por, se',
};
