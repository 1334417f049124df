import { setFlagsFromString } from 'node:v8';
import { loadProgram } from './program/loadProgram.mjs';

// The program has many small functions, and each thread compiles its own: with the engine's usual patience of 132 KB an eighth of the
// processor's time at 10,000 units went into compiling what is soon done with. What is hot is compiled all the same, a moment later.
setFlagsFromString('--interrupt-budget=400000');
await loadProgram('analyse');
