'use strict';
// Asks a Footward service whether the parts of a column base hold.
//
//   const footward = require('footward');
//   const service = footward.connect('http://127.0.0.1:8061'); // or '127.0.0.1:50061'
//   const answer = await service.check({ weld: { ... } });
//   console.log(footward.text(answer));
//
// Every result is a design aid. It does not replace the local code and regulations or
// the judgement of a licensed engineer, who must check input, assumptions and result
// before anything is built.

const { connect, Service } = require('./lib/service');
const { CallError, RefusedError } = require('./lib/error');
const { text } = require('./lib/answer');

module.exports = { connect, Service, CallError, RefusedError, text };
