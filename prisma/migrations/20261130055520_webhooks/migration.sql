-- CreateTable
CREATE TABLE "webhook_endpoints" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "person_id" UUID,
    "role" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "url" TEXT NOT NULL,
    "kinds" TEXT[],
    "secret" BYTEA NOT NULL,
    "old_secret" BYTEA,
    "old_secret_until" TIMESTAMPTZ(3),
    "state" TEXT NOT NULL DEFAULT 'active',
    "failing_since" TIMESTAMPTZ(3),
    "problem" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "webhook_endpoints_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "webhook_deliveries" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "person_id" UUID,
    "endpoint_id" UUID NOT NULL,
    "event_id" UUID,
    "kind" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "next_attempt_at" TIMESTAMPTZ(3) NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "delivered_at" TIMESTAMPTZ(3),
    "status" INTEGER,
    "problem" TEXT,

    CONSTRAINT "webhook_deliveries_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "webhook_endpoints_firm_id_idx" ON "webhook_endpoints"("firm_id");

-- CreateIndex
CREATE INDEX "webhook_endpoints_person_id_idx" ON "webhook_endpoints"("person_id");

-- CreateIndex
CREATE UNIQUE INDEX "webhook_deliveries_endpoint_id_event_id_key" ON "webhook_deliveries"("endpoint_id", "event_id");

-- CreateIndex
CREATE INDEX "webhook_deliveries_endpoint_id_id_idx" ON "webhook_deliveries"("endpoint_id", "id");

-- CreateIndex
CREATE INDEX "webhook_deliveries_state_next_attempt_at_idx" ON "webhook_deliveries"("state", "next_attempt_at");

-- AddForeignKey
ALTER TABLE "webhook_endpoints" ADD CONSTRAINT "webhook_endpoints_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "webhook_deliveries" ADD CONSTRAINT "webhook_deliveries_endpoint_id_fkey" FOREIGN KEY ("endpoint_id") REFERENCES "webhook_endpoints"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- A firm's own are its staff's, a party's are that person's alone. A job of Garboard's, which acts for no person, sees
-- both of the firms it works for.
DO $$
DECLARE
    name text;
    rule constant text :=
        '(firm_id = ANY ((SELECT string_to_array(nullif(current_setting(''app.firm_ids'', true), ''''), '','')::uuid[])::uuid[])'
        ' AND (person_id IS NULL OR (SELECT nullif(current_setting(''app.person_id'', true), '''')) IS NULL))'
        ' OR person_id = (SELECT nullif(current_setting(''app.person_id'', true), '''')::uuid)';
BEGIN
    FOREACH name IN ARRAY ARRAY['webhook_endpoints', 'webhook_deliveries'] LOOP
        EXECUTE format('ALTER TABLE public.%I ENABLE ROW LEVEL SECURITY', name);
        EXECUTE format('CREATE POLICY own_webhooks ON public.%I TO garboard_app USING (%s) WITH CHECK (%s)', name, rule, rule);
    END LOOP;
END
$$;
