#!/usr/bin/env node
'use strict'
require('../dist/thirdstop.cjs').run(process.argv.slice(2))
