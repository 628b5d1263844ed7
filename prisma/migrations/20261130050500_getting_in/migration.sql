-- AlterTable
ALTER TABLE "people" ADD COLUMN     "joined_at" TIMESTAMPTZ(3);
UPDATE "people" SET "joined_at" = "created_at" WHERE "password_hash" IS NOT NULL;

-- AlterTable
ALTER TABLE "sessions" ADD COLUMN     "address" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "by_link" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "device" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "last_seen_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP;

-- AlterTable
ALTER TABLE "one_time_links" ADD COLUMN     "mail_by" TIMESTAMPTZ(3);

-- CreateTable
CREATE TABLE "second_factors" (
    "person_id" UUID NOT NULL,
    "sealed" BYTEA NOT NULL,
    "confirmed_at" TIMESTAMPTZ(3),
    "last_step" INTEGER NOT NULL DEFAULT 0,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "second_factors_pkey" PRIMARY KEY ("person_id")
);

-- CreateTable
CREATE TABLE "recovery_codes" (
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "mark" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "used_at" TIMESTAMPTZ(3),

    CONSTRAINT "recovery_codes_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "attempt_counts" (
    "key" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "ends_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "attempt_counts_pkey" PRIMARY KEY ("key")
);

-- CreateTable
CREATE TABLE "api_keys" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "access" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "beginning" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "expires_at" TIMESTAMPTZ(3),
    "last_used_at" TIMESTAMPTZ(3),
    "revoked_at" TIMESTAMPTZ(3),

    CONSTRAINT "api_keys_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "share_links" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "report_id" UUID NOT NULL,
    "token_hash" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "passcode_hash" TEXT,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "view_limit" INTEGER,
    "views" INTEGER NOT NULL DEFAULT 0,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "revoked_at" TIMESTAMPTZ(3),
    "made_by_id" UUID,
    "made_by_name" TEXT NOT NULL,
    "made_by_role" TEXT NOT NULL,

    CONSTRAINT "share_links_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "share_viewings" (
    "id" UUID NOT NULL,
    "firm_id" UUID NOT NULL,
    "survey_id" UUID NOT NULL,
    "share_link_id" UUID NOT NULL,
    "token_hash" TEXT NOT NULL,
    "opened_at" TIMESTAMPTZ(3) NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "device" TEXT NOT NULL,

    CONSTRAINT "share_viewings_pkey" PRIMARY KEY ("id")
);

-- CreateIndex
CREATE UNIQUE INDEX "recovery_codes_person_id_mark_key" ON "recovery_codes"("person_id", "mark");

-- CreateIndex
CREATE INDEX "attempt_counts_ends_at_idx" ON "attempt_counts"("ends_at");

-- CreateIndex
CREATE UNIQUE INDEX "api_keys_token_hash_key" ON "api_keys"("token_hash");

-- CreateIndex
CREATE INDEX "api_keys_person_id_idx" ON "api_keys"("person_id");

-- CreateIndex
CREATE INDEX "api_keys_firm_id_idx" ON "api_keys"("firm_id");

-- CreateIndex
CREATE UNIQUE INDEX "share_links_token_hash_key" ON "share_links"("token_hash");

-- CreateIndex
CREATE INDEX "share_links_report_id_idx" ON "share_links"("report_id");

-- CreateIndex
CREATE INDEX "share_links_survey_id_idx" ON "share_links"("survey_id");

-- CreateIndex
CREATE INDEX "share_links_firm_id_idx" ON "share_links"("firm_id");

-- CreateIndex
CREATE INDEX "share_links_made_by_id_idx" ON "share_links"("made_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "share_viewings_token_hash_key" ON "share_viewings"("token_hash");

-- CreateIndex
CREATE INDEX "share_viewings_share_link_id_idx" ON "share_viewings"("share_link_id");

-- AddForeignKey
ALTER TABLE "second_factors" ADD CONSTRAINT "second_factors_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "recovery_codes" ADD CONSTRAINT "recovery_codes_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "api_keys" ADD CONSTRAINT "api_keys_firm_id_fkey" FOREIGN KEY ("firm_id") REFERENCES "firms"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "api_keys" ADD CONSTRAINT "api_keys_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "people"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "share_links" ADD CONSTRAINT "share_links_survey_id_fkey" FOREIGN KEY ("survey_id") REFERENCES "surveys"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "share_links" ADD CONSTRAINT "share_links_report_id_fkey" FOREIGN KEY ("report_id") REFERENCES "reports"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "share_links" ADD CONSTRAINT "share_links_made_by_id_fkey" FOREIGN KEY ("made_by_id") REFERENCES "people"("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "share_viewings" ADD CONSTRAINT "share_viewings_share_link_id_fkey" FOREIGN KEY ("share_link_id") REFERENCES "share_links"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- A key is its maker's own affair, whatever firm it acts in.
ALTER TABLE "api_keys" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_person ON "api_keys" TO garboard_app
    USING (person_id = (SELECT nullif(current_setting('app.person_id', true), '')::uuid))
    WITH CHECK (person_id = (SELECT nullif(current_setting('app.person_id', true), '')::uuid));

-- Share links are the firm's, and the client's who owns the report.
ALTER TABLE "share_links" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_firms ON "share_links" TO garboard_app
    USING (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]))
    WITH CHECK (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]));
CREATE POLICY party_select ON "share_links" FOR SELECT TO garboard_person
    USING (EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = share_links.survey_id AND m.client));
CREATE POLICY party_insert ON "share_links" FOR INSERT TO garboard_person WITH CHECK (
    made_by_id = nullif(current_setting('app.person_id', true), '')::uuid AND EXISTS (
        SELECT FROM my_parties AS m
        WHERE m.survey_id = share_links.survey_id AND m.firm_id = share_links.firm_id AND m.client AND m.sees
    )
);
CREATE POLICY party_update ON "share_links" FOR UPDATE TO garboard_person
    USING (EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = share_links.survey_id AND m.client));
CREATE TRIGGER kept BEFORE UPDATE ON "share_links" FOR EACH ROW WHEN (current_user = 'garboard_person')
    EXECUTE FUNCTION garboard_keep_columns(
        'id', 'firm_id', 'survey_id', 'report_id', 'token_hash', 'label', 'passcode_hash', 'expires_at', 'view_limit',
        'views', 'created_at', 'made_by_id', 'made_by_name', 'made_by_role'
    );

ALTER TABLE "share_viewings" ENABLE ROW LEVEL SECURITY;
CREATE POLICY own_firms ON "share_viewings" TO garboard_app
    USING (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]))
    WITH CHECK (firm_id = ANY ((SELECT string_to_array(nullif(current_setting('app.firm_ids', true), ''), ',')::uuid[])::uuid[]));
CREATE POLICY party_select ON "share_viewings" FOR SELECT TO garboard_person
    USING (EXISTS (SELECT FROM my_parties AS m WHERE m.survey_id = share_viewings.survey_id AND m.client));

-- What must be answered before it is known who asks: whom a key lets act, and which report a link shows.

-- The key's person and role, while the person has that role in that firm; says, to the minute, when it was used.
CREATE FUNCTION garboard_use_api_key(token_hash text)
RETURNS TABLE (
    key_id uuid, firm_id uuid, role text, access text, person_id uuid, name text, email text, is_staff boolean
)
LANGUAGE sql VOLATILE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    WITH k AS (
        SELECT
            api_keys.id, api_keys.firm_id, api_keys.role, api_keys.access, api_keys.person_id,
            people.name, people.email,
            EXISTS (
                SELECT FROM firm_members m
                WHERE m.person_id = api_keys.person_id AND m.firm_id = api_keys.firm_id AND m.role = api_keys.role
            ) AS is_staff
        FROM api_keys JOIN people ON people.id = api_keys.person_id
        WHERE api_keys.token_hash = garboard_use_api_key.token_hash
          AND api_keys.revoked_at IS NULL
          AND (api_keys.expires_at IS NULL OR api_keys.expires_at > now())
    ), held AS (
        SELECT * FROM k WHERE is_staff OR EXISTS (
            SELECT FROM parties p
            WHERE p.person_id = k.person_id AND p.firm_id = k.firm_id AND p.role = k.role
        )
    ), used AS (
        UPDATE api_keys SET last_used_at = now() FROM held
        WHERE api_keys.id = held.id
          AND (api_keys.last_used_at IS NULL OR api_keys.last_used_at < now() - interval '1 minute')
    )
    SELECT id, firm_id, role, access, person_id, name, email, is_staff FROM held;
$$;

CREATE FUNCTION garboard_share_link(token_hash text)
RETURNS TABLE (id uuid, firm_id uuid)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT share_links.id, share_links.firm_id FROM share_links
    WHERE share_links.token_hash = garboard_share_link.token_hash;
$$;

CREATE FUNCTION garboard_share_viewing(viewing_id uuid, token_hash text)
RETURNS TABLE (share_link_id uuid, firm_id uuid, opened_at timestamptz, expires_at timestamptz)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT v.share_link_id, v.firm_id, v.opened_at, v.expires_at FROM share_viewings AS v
    WHERE v.id = viewing_id AND v.token_hash = garboard_share_viewing.token_hash AND v.expires_at > now();
$$;

-- As before, and when the session was last seen to be used.
DROP FUNCTION garboard_session(text);
CREATE FUNCTION garboard_session(token_hash text)
RETURNS TABLE (
    person_id uuid, name text, email text, expires_at timestamptz, last_seen_at timestamptz, memberships jsonb,
    firm_ids uuid[]
)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$
    SELECT
        people.id,
        people.name,
        people.email,
        sessions.expires_at,
        sessions.last_seen_at,
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
REVOKE ALL ON FUNCTION garboard_session(text) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION garboard_session(text) TO garboard_app;

REVOKE ALL ON FUNCTION garboard_use_api_key(text), garboard_share_link(text), garboard_share_viewing(uuid, text)
    FROM PUBLIC;
GRANT EXECUTE ON FUNCTION garboard_use_api_key(text), garboard_share_link(text), garboard_share_viewing(uuid, text)
    TO garboard_app;

-- Invitations that still wait to be sent may be; those sent before keep their end.
UPDATE one_time_links SET mail_by = expires_at WHERE kind = 'invitation' AND used_at IS NULL;
