// An SMSC for tests: npm's smpp, its files as they are, with a port to control it by. Several accounts (system ids) may
// use it at once and know nothing of each other.
// Run: node smsc_server.js SMPP_PORT CONTROL_PORT. Prints "ready"; ends with its standard input.
'use strict';

const http = require('http');
const smpp = require('smpp');

const [smppPort, controlPort] = process.argv.slice(2).map(Number);
const accounts = new Map();
let lastId = 0x1000;

const account = (name) => {
  if (!accounts.has(name)) {
    accounts.set(name, { sessions: new Set(), binds: [], submitted: [], waiting: [], faults: [], answers: [], receipts: null, enquiries: 0 });
  }
  return accounts.get(name);
};

const heard = (pdu) => {
  const { message, udh } = pdu.short_message;
  const concat = (udh || []).find((one) => one[0] === 0x00);
  return {
    from: pdu.source_addr, from_ton: pdu.source_addr_ton, to: pdu.destination_addr, to_ton: pdu.dest_addr_ton,
    text: String(message), coding: pdu.data_coding, esm_class: pdu.esm_class, receipt: pdu.registered_delivery,
    validity: pdu.validity_period ? String(new Date(pdu.validity_period).toISOString()) : null,
    part: concat ? [concat[2], concat[3], concat[4]] : null,
  };
};

const receipt = (id, state, from, to) => ({
  source_addr: from, destination_addr: to, source_addr_ton: 1, esm_class: 0x04, data_coding: 0,
  short_message: { message: `id:${id} sub:001 dlvrd:001 submit date:2603012000 done date:2603012001 stat:${state} err:000 text:` },
});

// What comes in is offered until it is taken, one after the other, as an SMSC does that keeps what it has.
const offer = (name) => {
  const state = account(name);
  const session = [...state.sessions].find((one) => one.hears);
  if (!session || state.offering) return;
  const next = state.waiting[0];
  if (!next) return;
  state.offering = true;
  const again = () => { state.offering = false; setTimeout(() => offer(name), 50); };
  session.once('close', again);
  session.deliver_sm({ ...next.pdu }, (answer) => {
    session.removeListener('close', again);
    state.answers.push(answer.command_status);
    if (answer.command_status === 0) state.waiting.shift();
    state.offering = false;
    setTimeout(() => offer(name), answer.command_status === 0 ? 0 : 50);
  });
};

const server = smpp.createServer((session) => {
  let name = null;
  const bind = (hears) => (pdu) => {
    if (pdu.password === 'wrong') {
      session.send(pdu.response({ command_status: smpp.ESME_RINVPASWD }));
      return session.close();
    }
    name = pdu.system_id;
    session.hears = hears;
    account(name).sessions.add(session);
    account(name).binds.push(pdu.command);
    session.send(pdu.response({ system_id: 'test' }));
    setTimeout(() => offer(name), 10);
  };
  session.on('error', () => session.destroy());
  session.on('close', () => name && account(name).sessions.delete(session));
  session.on('bind_transceiver', bind(true));
  session.on('bind_transmitter', bind(false));
  session.on('unbind', (pdu) => { session.send(pdu.response()); session.close(); });
  session.on('enquire_link', (pdu) => {
    if (!name) return;
    account(name).enquiries += 1;
    if (!account(name).deaf) session.send(pdu.response());
  });
  session.on('submit_sm', (pdu) => {
    const state = account(name);
    const fault = state.faults[0];
    if (fault && (!fault.to || fault.to === pdu.destination_addr)) {
      if (fault.after > 0) fault.after -= 1;
      else {
        fault.times -= 1;
        if (fault.times <= 0) state.faults.shift();
        if (fault.kind === 'status') return session.send(pdu.response({ command_status: fault.status }));
        if (fault.kind === 'drop') return session.destroy();
        if (fault.kind === 'lose') { // taken, but never answered
          state.submitted.push({ id: 'lost', ...heard(pdu) });
          return fault.cut ? session.destroy() : undefined;
        }
      }
    }
    const number = ++lastId;
    const id = state.hex ? number.toString(16).toUpperCase() : String(number);
    state.submitted.push({ id, number, ...heard(pdu) });
    const answer = () => session.send(pdu.response({ message_id: id }));
    const report = () => {
      const wanted = state.receipts;
      if (!wanted || !(pdu.registered_delivery & 1)) return;
      for (let count = 0; count < (wanted.times || 1); count += 1) {
        state.waiting.push({ pdu: receipt(state.hex ? String(number).padStart(10, '0') : id, wanted.state, pdu.destination_addr, pdu.source_addr) });
      }
      offer(name);
    };
    if (state.receipts && state.receipts.first) { report(); setTimeout(answer, 150); } else { answer(); setTimeout(report, 20); }
  });
});

const control = {
  set: (state, wanted) => Object.assign(state, wanted),
  fault: (state, wanted) => state.faults.push({ times: 1, after: 0, ...wanted }),
  deliver: (state, wanted, name) => {
    const { udh, hex, text, ...fields } = wanted;
    const message = hex ? Buffer.from(hex, 'hex') : text;
    const short_message = udh ? { udh: Buffer.from(udh, 'hex'), message } : { message };
    const pdu = { source_addr_ton: 1, source_addr_npi: 1, data_coding: 0, ...fields };
    state.waiting.push({ pdu: fields.message_payload ? pdu : { ...pdu, short_message } });
    offer(name);
  },
  receipt: (state, wanted, name) => {
    state.waiting.push({ pdu: receipt(wanted.id, wanted.state, wanted.from, wanted.to) });
    offer(name);
  },
  cut: (state) => state.sessions.forEach((one) => one.destroy()),
  raw: (state, wanted) => state.sessions.forEach((one) => one.socket.write(Buffer.from(wanted.hex, 'hex'))),
  state: (state) => ({ submitted: state.submitted, waiting: state.waiting.length, answers: state.answers,
    binds: state.binds, enquiries: state.enquiries, sessions: state.sessions.size }),
};

http.createServer(async (request, response) => {
  let body = '';
  for await (const chunk of request) body += chunk;
  const { account: name, ...wanted } = JSON.parse(body);
  const said = control[request.url.slice(1)](account(name), wanted, name);
  response.end(JSON.stringify(request.url === '/state' ? said : {}));
}).listen(controlPort, '127.0.0.1', () => server.listen(smppPort, '127.0.0.1', () => console.log('ready')));

process.stdin.on('end', () => process.exit());
process.stdin.resume();
