using System.Text.Encodings.Web;
using System.Text.Json;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Tables;

/// <summary>A file of data: schema, revision, job and units at its head; nothing in it depends on the time or on the machine, so that the same plan gives the same bytes.</summary>
internal static class JsonFile
{
    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        IndentSize = 1,
        NewLine = "\n",
        // A file, not a page: ° and ü stay readable.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Writes the file, its end of line included. The stream is left open.</summary>
    /// <param name="angles">Some of the figures are angles.</param>
    public static void Write(
        (string Schema, Job Job) of,
        bool angles,
        Stream stream,
        Action<Utf8JsonWriter, JsonNumbers> write
    )
    {
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            Head(json, of, angles);
            write(json, new JsonNumbers(json));
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
    }

    /// <summary>The object's beginning.</summary>
    public static void Head(Utf8JsonWriter json, (string Schema, Job Job) of, bool angles)
    {
        json.WriteStartObject();
        json.WriteString("schema", of.Schema);
        json.WriteString("revision", of.Job.Revision);
        json.WriteString("job", of.Job.Name);
        json.WriteString("lengthUnit", "mm");
        if (angles)
        {
            json.WriteString("angleUnit", "deg");
        }
    }

    /// <summary>"findings": [{ "severity", "rank", "where", "message" }].</summary>
    public static void Findings(Utf8JsonWriter json, IEnumerable<Finding> findings)
    {
        json.Objects(
            "findings",
            findings,
            finding =>
            {
                json.WriteString("severity", PlankWords.Of(finding.Severity));
                json.WriteString("rank", FindingsText.Of(finding.Rank).ToLowerInvariant());
                json.WriteString("where", finding.Where);
                json.WriteString("message", finding.Message);
            }
        );
    }
}
