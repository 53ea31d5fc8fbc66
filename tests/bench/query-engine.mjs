// The job in SQL: `node query-engine.mjs INPUT OUT [STATE ...]` writes the changes of a poll with their bounds: of the parameters
// named, or of all without any.
import { DuckDBInstance } from '@duckdb/node-api';

const [input, out, ...states] = process.argv.slice(2);
const quoted = (path) => `'${path.replaceAll("'", "''")}'`;
const instance = await DuckDBInstance.create(':memory:', { threads: '2', preserve_insertion_order: 'false' });
const connection = await instance.connect();
const types = "{'time': 'VARCHAR', 'unit': 'VARCHAR', 'parameter': 'VARCHAR', 'value': 'VARCHAR'}";
const rows = `read_csv(${quoted(input)}, header = true, delim = ',', quote = '', columns = ${types}, parallel = true)`;
const wanted = states.length === 0 ? '' : ` where parameter in (${states.map(quoted).join(', ')})`;
const poll = `(select * from ${rows}${wanted})`;
for (const column of ['unit', 'parameter', 'value'])
  await connection.run(
    `create type ${column}_name as enum (select distinct ${column} from (select ${column} from ${poll} limit 200000) order by all)`,
  );
await connection.run(`copy (
  select unit, parameter, value, time, earliest from (
    select unit, parameter, value, time, lag(value) over poll as before, lag(time) over poll as earliest
    from (select time::timestamp as time, unit::unit_name as unit, parameter::parameter_name as parameter, value::value_name as value from ${poll})
    window poll as (partition by unit, parameter order by time))
  where before <> value) to ${quoted(out)} (format csv, header false, timestampformat '%Y-%m-%dT%H:%M:%S.%gZ')`);
