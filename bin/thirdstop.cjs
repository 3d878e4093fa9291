#!/usr/bin/env node
'use strict'
const { readFileSync } = require('node:fs')
const Module = require('node:module')
const { join } = require('node:path')
const { Script } = require('node:vm')

const file = join(__dirname, '../dist/thirdstop.cjs')
/** What V8 compiled when this version of node built the program: to start from it saves half of the start. */
const cacheFile = join(__dirname, `../dist/thirdstop.${process.version}-${process.arch}.cache`)

/** Loads the program from a cache of its code. V8 compiles anew where the cache is not its own. */
const load = (cachedData) => {
  const script = new Script(Module.wrap(readFileSync(file, 'latin1')), { filename: file, cachedData })
  const module = { exports: {} }
  script.runInThisContext()(module.exports, require, module, file, join(file, '..'))
  return { program: module.exports, script }
}

const cache = () => {
  try {
    return readFileSync(cacheFile)
  } catch {
    return undefined
  }
}

const open = () => {
  const cachedData = cache()
  if (cachedData !== undefined) return load(cachedData).program
  Module.enableCompileCache?.()
  return require(file)
}

if (require.main === module) open().run(process.argv.slice(2), __filename)
else module.exports = { open, load, cache, cacheFile }
