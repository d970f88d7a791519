using System.Text.Json;

namespace PlankFit.Export.Tables;

/// <summary>Lists in a JSON file.</summary>
internal static class JsonLists
{
    extension(Utf8JsonWriter json)
    {
        /// <summary>"name": [{ … }, { … }].</summary>
        /// <param name="write">The properties of one.</param>
        public void Objects<T>(string name, IEnumerable<T> of, Action<T> write)
        {
            json.WriteStartArray(name);
            foreach (T one in of)
            {
                json.WriteStartObject();
                write(one);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        /// <summary>"name": ["…", "…"].</summary>
        public void Strings(string name, IEnumerable<string> of)
        {
            json.WriteStartArray(name);
            foreach (string one in of)
            {
                json.WriteStringValue(one);
            }

            json.WriteEndArray();
        }
    }
}
