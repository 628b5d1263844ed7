ALTER TABLE "outbox" ADD COLUMN "done_at" TIMESTAMPTZ(3);

-- Of what was handed over before, nobody has noted what became of it.
UPDATE "outbox" SET done_at = dispatched_at WHERE dispatched_at IS NOT NULL;

-- Few at any time: what queues are at just now.
CREATE INDEX "outbox_under_way" ON "outbox" (dispatched_at) WHERE done_at IS NULL AND dispatched_at IS NOT NULL;
