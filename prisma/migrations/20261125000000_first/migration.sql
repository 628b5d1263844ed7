-- CreateTable
CREATE TABLE "photos" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "sha256" TEXT NOT NULL,
    "bytes" INTEGER NOT NULL,
    "media_type" TEXT NOT NULL,
    "file_name" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "taken_at" TIMESTAMPTZ(3),
    "order_key" TEXT NOT NULL,
    "caption" TEXT NOT NULL DEFAULT '',
    "marks" JSONB NOT NULL DEFAULT '[]',
    "quarter_turns" INTEGER NOT NULL DEFAULT 0,
    "state" TEXT NOT NULL DEFAULT 'processing',
    "thumb_hash" TEXT,
    "screen_hash" TEXT,
    "print_hash" TEXT,
    "uploaded_by_id" UUID,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "photos_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "findings" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "system" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "observed" TEXT NOT NULL DEFAULT '',
    "consequence" TEXT NOT NULL DEFAULT '',
    "recommendation" TEXT NOT NULL DEFAULT '',
    "urgency" TEXT NOT NULL,
    "within_days" INTEGER,
    "harms" TEXT[],
    "references" TEXT[],
    "catalogue_key" TEXT,
    "position" JSONB,
    "state" TEXT NOT NULL DEFAULT 'draft',
    "due_on" DATE,
    "issued" JSONB,
    "clearing" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "findings_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "finding_photos" (
    "firm_id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "photo_id" UUID NOT NULL,
    "ordinal" INTEGER NOT NULL,

    CONSTRAINT "finding_photos_pkey" PRIMARY KEY ("finding_id","photo_id")
);

-- CreateTable
CREATE TABLE "people" (
    "id" UUID NOT NULL,
    "email" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "password_hash" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "people_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "firms" (
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "address_lines" TEXT[],
    "email" TEXT,
    "phone" TEXT,
    "layup_requires_clearing" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "firms_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "firm_members" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "qualifications" TEXT NOT NULL DEFAULT '',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "firm_members_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "sessions" (
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "token_hash" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "sessions_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "one_time_links" (
    "id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "email" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "used_at" TIMESTAMPTZ(3),

    CONSTRAINT "one_time_links_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "idempotency_keys" (
    "person_id" UUID NOT NULL,
    "key" TEXT NOT NULL,
    "route" TEXT NOT NULL,
    "fingerprint" TEXT NOT NULL,
    "status" INTEGER,
    "answer" JSONB,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "idempotency_keys_pkey" PRIMARY KEY ("person_id","key")
);

-- CreateTable
CREATE TABLE "reports" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "revision" INTEGER NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'queued',
    "progress" INTEGER NOT NULL DEFAULT 0,
    "stage" TEXT NOT NULL DEFAULT '',
    "problem" TEXT,
    "snapshot" JSONB NOT NULL,
    "claim" UUID,
    "heartbeat_at" TIMESTAMPTZ(3),
    "sha256" TEXT,
    "pages" INTEGER,
    "bytes" INTEGER,
    "requested_by_id" UUID,
    "requested_by" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "issued_at" TIMESTAMPTZ(3),

    CONSTRAINT "reports_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "report_photos" (
    "firm_id" UUID NOT NULL,
    "report_id" UUID NOT NULL,
    "photo_id" UUID NOT NULL,

    CONSTRAINT "report_photos_pkey" PRIMARY KEY ("report_id","photo_id")
);

-- CreateTable
CREATE TABLE "clearances" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "finding_id" UUID NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'sent',
    "statement" TEXT NOT NULL,
    "work_done_by" TEXT NOT NULL,
    "work_done_on" DATE NOT NULL,
    "sent_by_id" UUID,
    "sent_by_name" TEXT NOT NULL,
    "sent_by_role" TEXT NOT NULL,
    "sent_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "decision" TEXT,
    "reason" TEXT,
    "decided_by_id" UUID,
    "decided_by_name" TEXT,
    "decided_by_role" TEXT,
    "decided_at" TIMESTAMPTZ(3),

    CONSTRAINT "clearances_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "clearance_files" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "clearance_id" UUID NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "sha256" TEXT NOT NULL,
    "bytes" INTEGER NOT NULL,
    "media_type" TEXT NOT NULL,
    "file_name" TEXT NOT NULL,
    "width" INTEGER,
    "height" INTEGER,
    "thumb_hash" TEXT,
    "screen_hash" TEXT,

    CONSTRAINT "clearance_files_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "outbox" (
    "id" UUID NOT NULL,
    "job" TEXT NOT NULL,
    "data" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "dispatched_at" TIMESTAMPTZ(3),

    CONSTRAINT "outbox_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "vessels" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "hull_number" TEXT,
    "official_number" TEXT,
    "builder" TEXT,
    "model" TEXT,
    "year_built" INTEGER,
    "hull_material" TEXT,
    "propulsion" TEXT,
    "length_overall_m" DOUBLE PRECISION,
    "beam_m" DOUBLE PRECISION,
    "draft_m" DOUBLE PRECISION,
    "displacement_kg" DOUBLE PRECISION,
    "home_port" TEXT,
    "flag" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "vessels_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "surveys" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "vessel_id" UUID NOT NULL,
    "number" TEXT NOT NULL,
    "purpose" TEXT NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'enquiry',
    "requested_by" TEXT NOT NULL DEFAULT '',
    "scope" TEXT NOT NULL DEFAULT '',
    "limitations" TEXT NOT NULL DEFAULT '',
    "time_zone" TEXT NOT NULL DEFAULT 'UTC',
    "clearance_decided_by" TEXT NOT NULL DEFAULT 'insurer',
    "surveyor_id" UUID,
    "lead_photo_id" UUID,
    "finding_count" INTEGER NOT NULL DEFAULT 0,
    "photo_count" INTEGER NOT NULL DEFAULT 0,
    "issued_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "surveys_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "survey_counters" (
    "firm_id" UUID NOT NULL,
    "year" INTEGER NOT NULL,
    "last" INTEGER NOT NULL,

    CONSTRAINT "survey_counters_pkey" PRIMARY KEY ("firm_id","year")
);

-- CreateTable
CREATE TABLE "attendances" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "ordinal" INTEGER NOT NULL,
    "date" DATE NOT NULL,
    "place" TEXT NOT NULL,
    "condition" TEXT NOT NULL,

    CONSTRAINT "attendances_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "parties" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "released" BOOLEAN NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "parties_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "events" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "finding_id" UUID,
    "report_id" UUID,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "kind" TEXT NOT NULL,
    "actor_id" UUID,
    "actor_name" TEXT NOT NULL,
    "actor_role" TEXT NOT NULL,
    "data" JSONB NOT NULL,

    CONSTRAINT "events_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE INDEX "photos_survey_id_order_key_idx" ON "photos"("survey_id", "order_key");

-- CreateIndex
CREATE INDEX "photos_sha256_idx" ON "photos"("sha256");

-- CreateIndex
CREATE UNIQUE INDEX "photos_survey_id_sha256_key" ON "photos"("survey_id", "sha256");

-- By hand: deferred, so that a renumbering may pass through equal numbers.
ALTER TABLE "findings" ADD CONSTRAINT "findings_survey_id_number_key"
    UNIQUE ("survey_id", "number") DEFERRABLE INITIALLY DEFERRED;

-- CreateIndex
CREATE INDEX "findings_firm_id_clearing_due_on_id_idx" ON "findings"("firm_id", "clearing", "due_on", "id");

-- CreateIndex
CREATE INDEX "finding_photos_photo_id_idx" ON "finding_photos"("photo_id");

-- CreateIndex
CREATE UNIQUE INDEX "people_email_key" ON "people"("email");

-- CreateIndex
CREATE INDEX "firm_members_person_id_idx" ON "firm_members"("person_id");

-- CreateIndex
CREATE UNIQUE INDEX "firm_members_firm_id_person_id_key" ON "firm_members"("firm_id", "person_id");

-- CreateIndex
CREATE UNIQUE INDEX "sessions_token_hash_key" ON "sessions"("token_hash");

-- CreateIndex
CREATE INDEX "sessions_person_id_idx" ON "sessions"("person_id");

-- CreateIndex
CREATE INDEX "sessions_expires_at_idx" ON "sessions"("expires_at");

-- CreateIndex
CREATE UNIQUE INDEX "one_time_links_token_hash_key" ON "one_time_links"("token_hash");

-- CreateIndex
CREATE INDEX "one_time_links_email_idx" ON "one_time_links"("email");

-- CreateIndex
CREATE INDEX "idempotency_keys_created_at_idx" ON "idempotency_keys"("created_at");

-- CreateIndex
CREATE INDEX "reports_state_heartbeat_at_idx" ON "reports"("state", "heartbeat_at");

-- CreateIndex
CREATE UNIQUE INDEX "reports_survey_id_kind_revision_key" ON "reports"("survey_id", "kind", "revision");

-- CreateIndex
CREATE INDEX "report_photos_photo_id_idx" ON "report_photos"("photo_id");

-- CreateIndex
CREATE INDEX "clearances_finding_id_id_idx" ON "clearances"("finding_id", "id");

-- CreateIndex
CREATE INDEX "clearance_files_clearance_id_ordinal_idx" ON "clearance_files"("clearance_id", "ordinal");

-- CreateIndex
CREATE INDEX "clearance_files_sha256_idx" ON "clearance_files"("sha256");

-- CreateIndex
CREATE INDEX "outbox_dispatched_at_id_idx" ON "outbox"("dispatched_at", "id");

-- CreateIndex
CREATE INDEX "vessels_firm_id_id_idx" ON "vessels"("firm_id", "id");

-- CreateIndex
CREATE INDEX "surveys_firm_id_id_idx" ON "surveys"("firm_id", "id");

-- CreateIndex
CREATE INDEX "surveys_vessel_id_idx" ON "surveys"("vessel_id");

-- CreateIndex
CREATE UNIQUE INDEX "surveys_firm_id_number_key" ON "surveys"("firm_id", "number");

-- CreateIndex
CREATE UNIQUE INDEX "attendances_survey_id_ordinal_key" ON "attendances"("survey_id", "ordinal");

-- CreateIndex
CREATE INDEX "parties_person_id_survey_id_idx" ON "parties"("person_id", "survey_id");

-- CreateIndex
CREATE UNIQUE INDEX "parties_survey_id_person_id_role_key" ON "parties"("survey_id", "person_id", "role");

-- CreateIndex
CREATE INDEX "events_survey_id_id_idx" ON "events"("survey_id", "id");

-- CreateIndex
CREATE INDEX "events_finding_id_id_idx" ON "events"("finding_id", "id");

-- AddForeignKey
ALTER TABLE "photos" ADD CONSTRAINT "photos_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "findings" ADD CONSTRAINT "findings_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding_photos" ADD CONSTRAINT "finding_photos_finding_id_fkey" FOREIGN KEY ("finding_id") REFERENCES "findings"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "finding_photos" ADD CONSTRAINT "finding_photos_photo_id_fkey" FOREIGN KEY ("photo_id") REFERENCES "photos"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "firm_members" ADD CONSTRAINT "firm_members_firm_id_fkey" FOREIGN KEY ("firm_id") REFERENCES "firms"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "firm_members" ADD CONSTRAINT "firm_members_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "sessions" ADD CONSTRAINT "sessions_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reports" ADD CONSTRAINT "reports_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "report_photos" ADD CONSTRAINT "report_photos_report_id_fkey" FOREIGN KEY ("report_id") REFERENCES "reports"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "report_photos" ADD CONSTRAINT "report_photos_photo_id_fkey" FOREIGN KEY ("photo_id") REFERENCES "photos"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clearances" ADD CONSTRAINT "clearances_finding_id_fkey" FOREIGN KEY ("finding_id") REFERENCES "findings"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clearance_files" ADD CONSTRAINT "clearance_files_clearance_id_fkey" FOREIGN KEY ("clearance_id") REFERENCES "clearances"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "vessels" ADD CONSTRAINT "vessels_firm_id_fkey" FOREIGN KEY ("firm_id") REFERENCES "firms"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "surveys" ADD CONSTRAINT "surveys_firm_id_fkey" FOREIGN KEY ("firm_id") REFERENCES "firms"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "surveys" ADD CONSTRAINT "surveys_vessel_id_fkey" FOREIGN KEY ("vessel_id") REFERENCES "vessels"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "attendances" ADD CONSTRAINT "attendances_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "parties" ADD CONSTRAINT "parties_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "parties" ADD CONSTRAINT "parties_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- From here on by hand: what a Prisma schema can't say.

-- The role the application works under. It owns nothing, so row-level security binds it. Roles belong to the
-- whole server: it may be there already, or be made by another database's migration at this moment.
DO $$
BEGIN
    IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'garboard_app') THEN
        CREATE ROLE garboard_app NOLOGIN;
    END IF;
EXCEPTION
    WHEN duplicate_object OR unique_violation THEN
        NULL;
    WHEN insufficient_privilege THEN
        RAISE EXCEPTION 'This account may not make the role garboard_app. Ask the server''s administrator to run: CREATE ROLE garboard_app NOLOGIN; GRANT garboard_app TO %;', quote_ident(current_user);
END
$$;

-- The application signs in as the owner and becomes garboard_app at once.
DO $$
BEGIN
    EXECUTE format('GRANT garboard_app TO %I', current_user);
EXCEPTION
    WHEN unique_violation THEN
        NULL;
    WHEN insufficient_privilege THEN
        IF NOT pg_has_role(current_user, 'garboard_app', 'MEMBER') THEN
            RAISE EXCEPTION 'This account may not take on the role garboard_app. Ask the server''s administrator to run: GRANT garboard_app TO %;', quote_ident(current_user);
        END IF;
END
$$;

GRANT USAGE ON SCHEMA public TO garboard_app;

DO $$
DECLARE
    name text;
BEGIN
    FOR name IN
        SELECT tablename FROM pg_tables WHERE schemaname = 'public' AND tablename <> '_prisma_migrations'
    LOOP
        EXECUTE format('GRANT SELECT, INSERT, UPDATE, DELETE ON public.%I TO garboard_app', name);
    END LOOP;
END
$$;

-- What has happened can be added to, not rewritten.
REVOKE UPDATE, DELETE ON events FROM garboard_app;

-- Tables of later migrations, which still have to set their own policies.
ALTER DEFAULT PRIVILEGES IN SCHEMA public GRANT SELECT, INSERT, UPDATE, DELETE ON TABLES TO garboard_app;

-- Row-level security: a transaction touches the rows of the firms named in app.firm_ids and no others; none named,
-- none touched. The inner SELECT is there so that the list is taken apart once a statement and not once a row.
DO $$
DECLARE
    name text;
    entitled constant text :=
        'ANY ((SELECT string_to_array(nullif(current_setting(''app.firm_ids'', true), ''''), '','')::uuid[])::uuid[])';
BEGIN
    FOR name IN
        SELECT table_name FROM information_schema.columns
        WHERE table_schema = 'public' AND column_name = 'firm_id'
    LOOP
        EXECUTE format('ALTER TABLE public.%I ENABLE ROW LEVEL SECURITY', name);
        EXECUTE format(
            'CREATE POLICY own_firms ON public.%I TO garboard_app USING (firm_id = %s) WITH CHECK (firm_id = %s)',
            name, entitled, entitled
        );
    END LOOP;
    ALTER TABLE public.firms ENABLE ROW LEVEL SECURITY;
    EXECUTE format(
        'CREATE POLICY own_firms ON public.firms TO garboard_app USING (id = %s) WITH CHECK (id = %s)',
        entitled, entitled
    );
END
$$;

-- The few questions that must be answered before, or without, knowing the firms. They run with the owner's rights.

CREATE FUNCTION garboard_firms_of(person uuid) RETURNS uuid[]
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT coalesce(array_agg(firm_id), '{}')
    FROM (
        SELECT firm_id FROM firm_members WHERE person_id = person
        UNION
        SELECT firm_id FROM parties WHERE person_id = person
    ) AS entitled;
$$;

CREATE FUNCTION garboard_all_firms() RETURNS uuid[]
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT coalesce(array_agg(id ORDER BY id), '{}') FROM firms;
$$;

-- Whether any row, of any firm, names the object with this hash. An index for each column would cost every upload
-- more than this scan, which happens only when something is deleted.
CREATE FUNCTION garboard_object_in_use(hash text) RETURNS boolean
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT EXISTS (SELECT FROM photos WHERE hash IN (sha256, thumb_hash, screen_hash, print_hash))
        OR EXISTS (SELECT FROM clearance_files WHERE hash IN (sha256, thumb_hash, screen_hash))
        OR EXISTS (SELECT FROM reports WHERE sha256 = hash);
$$;

-- Who an unexpired session belongs to, what that person is in which firms, and the firms to be touched.
CREATE FUNCTION garboard_session(token_hash text)
RETURNS TABLE (
    person_id uuid, name text, email text, expires_at timestamptz, memberships jsonb, firm_ids uuid[]
)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT
        people.id,
        people.name,
        people.email,
        sessions.expires_at,
        (
            SELECT coalesce(
                jsonb_agg(jsonb_build_object('firmId', m.firm_id, 'role', m.role) ORDER BY m.firm_id), '[]'
            )
            FROM firm_members AS m WHERE m.person_id = people.id
        ),
        garboard_firms_of(people.id)
    FROM sessions JOIN people ON people.id = sessions.person_id
    WHERE sessions.token_hash = garboard_session.token_hash AND sessions.expires_at > now();
$$;

REVOKE ALL ON FUNCTION garboard_firms_of(uuid), garboard_all_firms(), garboard_object_in_use(text),
    garboard_session(text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION garboard_firms_of(uuid), garboard_all_firms(), garboard_object_in_use(text),
    garboard_session(text) TO garboard_app;
