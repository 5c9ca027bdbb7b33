// A Bot API server for tests: npm's telegram-test-api, its files as they are, with what it lacks put before its routes.
// Run: node telegram_server.js PORT. Prints "ready"; ends with its standard input.
'use strict';

const busboy = require('busboy');
const { routes } = require('telegram-test-api/lib/routes/index');
const { TelegramServer } = require('telegram-test-api/lib/telegramServer');

const BOT = { id: 666, is_bot: true, first_name: 'Test', username: 'TestNameBot' };

const ok = (res, result) => res.json({ ok: true, result });
const refuse = (res, code, description, parameters) =>
  res.status(code).json({ ok: false, error_code: code, description, parameters });

const faults = []; // { token, method, kind, after, times, ... }, the oldest first
const calls = []; // { token, method, body }
const waiting = new Set(); // what to call when an update comes
const posting = new Set(); // the tokens whose updates are being posted

class Server extends TelegramServer {
  // The original gives milliseconds, no sender, and the request's own fields back.
  addBotMessage(raw, token) {
    const { chat_id: _, link_preview_options: __, ...message } = super.addBotMessage(raw, token);
    return { ...message, date: Math.floor(message.date / 1000), from: BOT };
  }

  // The original forgets an update once it was handed out or its post has failed.
  async addUserUpdate(update) {
    this.storage.userMessages.push(update);
    this.updateId += 1;
    waiting.forEach((wake) => wake());
    this.post(update.botToken);
  }

  unconfirmed(token) {
    return this.storage.userMessages.filter((update) => update.botToken === token);
  }

  confirm(token, offset) {
    this.storage.userMessages = this.storage.userMessages.filter(
      (update) => update.botToken !== token || update.updateId >= offset,
    );
  }

  // Posts one update after the other, each until it is taken.
  async post(token) {
    if (posting.has(token)) return;
    posting.add(token);
    while (this.webhooks[token] && this.unconfirmed(token).length) {
      const { url, secret_token: secret } = this.webhooks[token];
      const [update] = this.unconfirmed(token);
      const headers = { 'Content-Type': 'application/json', 'X-Telegram-Bot-Api-Secret-Token': secret };
      const body = JSON.stringify(Server.formatUpdate(update));
      const answer = await fetch(url, { method: 'POST', headers, body }).catch(() => ({ ok: false }));
      if (answer.ok) this.confirm(token, update.updateId + 1);
      else await new Promise((later) => setTimeout(later, 50));
    }
    posting.delete(token);
  }

  botMessage(token, { chat_id: chat, message_id: id }) {
    return this.storage.botMessages.find(
      (one) => one.botToken === token && String(one.message.chat_id) === chat && String(one.messageId) === id,
    );
  }

  static formatUpdate(update) {
    if (update.raw) return { update_id: update.updateId, ...update.raw };
    const formatted = TelegramServer.formatUpdate(update);
    if (formatted.callback_query) formatted.callback_query.chat_instance = 'test';
    return formatted;
  }
}

const bot = (method, answer) => (app, server) => app.all(`/bot:token/${method}`, (req, res) => answer(server, req, res));

function break_(fault, res, next) {
  if (fault.kind === 'answer') refuse(res, fault.code, fault.description, fault.parameters);
  else if (fault.kind === 'drop') res.socket.destroy();
  else if (fault.kind === 'lost') {
    res.json = () => res.socket.destroy();
    next();
  } // 'hang': never an answer
}

const witness = (app) => app.all('/bot:token/:method', (req, res, next) => {
  const { token, method } = req.params;
  calls.push({ token, method, body: { ...req.body } });
  const fault = faults.find((one) => one.token === token && one.method === method && one.times > 0);
  if (!fault) return next();
  if (fault.after > 0) {
    fault.after -= 1;
    return next();
  }
  fault.times -= 1;
  return break_(fault, res, next);
});

function getUpdates(server, req, res) {
  const { token } = req.params;
  if (server.webhooks[token]) return refuse(res, 409, "Conflict: can't use getUpdates method while webhook is active");
  server.confirm(token, Number(req.body.offset || 0));
  let timer;
  const answer = () => {
    clearTimeout(timer);
    waiting.delete(wake);
    ok(res, server.unconfirmed(token).map(Server.formatUpdate));
  };
  const wake = () => server.unconfirmed(token).length && answer();
  timer = setTimeout(answer, Number(req.body.timeout || 0) * 1000);
  waiting.add(wake);
  res.on('close', () => {
    clearTimeout(timer);
    waiting.delete(wake);
  });
  return wake();
}

function editMarkup(server, req, res) {
  const found = server.botMessage(req.params.token, req.body);
  if (!found) return refuse(res, 400, 'Bad Request: message to edit not found');
  found.message.reply_markup = req.body.reply_markup ? JSON.parse(req.body.reply_markup) : null;
  const chat = { id: Number(req.body.chat_id), type: 'private' };
  const date = Math.floor(found.time / 1000);
  const { text, reply_markup: markup } = found.message;
  return ok(res, { message_id: found.messageId, date, chat, from: BOT, text, reply_markup: markup || undefined });
}

// A picture or document: kept by its name, type and bytes.
const upload = (field, shape) => (server, req, res) => {
  const raw = {};
  const form = busboy({ headers: req.headers });
  form.on('field', (name, value) => { raw[name] = value; });
  form.on('file', (_, stream, { filename, mimeType }) => {
    const chunks = [];
    stream.on('data', (chunk) => chunks.push(chunk));
    stream.on('end', () => {
      raw.file = { name: filename, media: mimeType, data: Buffer.concat(chunks).toString('base64') };
    });
  });
  form.on('close', () => {
    const { file: _, chat_id: __, ...message } = server.addBotMessage(raw, req.params.token);
    ok(res, { ...message, [field]: shape });
  });
  req.pipe(form);
};

function setWebhook(server, req, res) {
  server.setWebhook(req.body, req.params.token);
  ok(res, true);
  server.post(req.params.token);
}

const control = (app, server) => {
  app.post('/control/fault', (req, res) => ok(res, faults.push(req.body)));
  app.post('/control/update', (req, res) => {
    const { token: botToken, raw } = req.body;
    server.addUserUpdate({ time: Date.now(), botToken, updateId: server.updateId, messageId: server.messageId, raw });
    ok(res, true);
  });
  app.post('/control/sent', (req, res) => {
    const mine = server.storage.botMessages.filter((one) => one.botToken === req.body.token);
    ok(res, mine.map(({ messageId, message }) => ({ message_id: messageId, ...message })));
  });
  app.post('/control/calls', (req, res) => ok(res, calls.filter((one) => one.token === req.body.token)));
  app.post('/control/unconfirmed', (req, res) => ok(res, server.unconfirmed(req.body.token).map(Server.formatUpdate)));
};

const yes = (_, __, res) => ok(res, true);
const size = { file_id: 'a', file_unique_id: 'a', width: 1, height: 1 };

routes.unshift(
  control,
  witness,
  bot('getMe', (_, __, res) => ok(res, BOT)),
  bot('getUpdates', getUpdates),
  bot('answerCallbackQuery', yes),
  bot('editMessageReplyMarkup', editMarkup),
  bot('sendPhoto', upload('photo', [size])),
  bot('sendDocument', upload('document', { file_id: 'a', file_unique_id: 'a' })),
  bot('setWebhook', setWebhook),
);

new Server({ port: Number(process.argv[2]), host: '127.0.0.1', storeTimeout: 3600 })
  .start()
  .then(() => process.stdout.write('ready\n'));
process.stdin.on('end', () => process.exit()).resume();
