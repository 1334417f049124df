/** Where a shard keeps its files and listens. */
export interface ShardPlace {
  readonly folder: string;
  readonly httpPort: number;
  readonly tcpPort: number;
}

/** Configuration of one shard: on loopback only, with all shards of the cluster. */
export function clickHouseConfig(
  { folder, httpPort, tcpPort }: ShardPlace,
  cluster: string,
  shards: readonly ShardPlace[],
): string {
  const replicas = shards.map(
    (shard) => `<shard><replica><host>127.0.0.1</host><port>${shard.tcpPort}</port></replica></shard>`,
  );
  return `<yandex>
  <logger><level>warning</level><log>${folder}/server.log</log><errorlog>${folder}/errors.log</errorlog></logger>
  <listen_host>127.0.0.1</listen_host>
  <http_port>${httpPort}</http_port>
  <tcp_port>${tcpPort}</tcp_port>
  <path>${folder}/data/</path>
  <tmp_path>${folder}/tmp/</tmp_path>
  <format_schema_path>${folder}/schemas/</format_schema_path>
  <users_config>${folder}/users.xml</users_config>
  <default_profile>default</default_profile>
  <default_database>default</default_database>
  <mark_cache_size>67108864</mark_cache_size>
  <remote_servers><${cluster}>${replicas.join('')}</${cluster}></remote_servers>
</yandex>
`;
}

/** One user without a password, from loopback only. */
export const clickHouseUsers = `<yandex>
  <profiles><default><max_memory_usage>8000000000</max_memory_usage></default></profiles>
  <quotas><default></default></quotas>
  <users>
    <default>
      <password></password>
      <networks><ip>127.0.0.1</ip></networks>
      <profile>default</profile>
      <quota>default</quota>
    </default>
  </users>
</yandex>
`;
