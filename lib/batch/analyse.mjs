import { loadProgram } from './program/loadProgram.mjs';

await loadProgram('analyse');
