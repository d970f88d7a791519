using System.Collections.Immutable;
using System.Text.Json;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Units;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.AsBuilt;

/// <summary>
/// The record of planks that are sawn, sawn-planks.json, schema plankfit-cut/2: written by `plankfit sawn`, read by every lay-out after it. Lengths in mm,
/// angles in degrees, with all their digits; and a checksum, for it cannot be made again.
/// </summary>
public static class SawnPlanksFile
{
    public const string Schema = "plankfit-cut/2";

    /// <summary>Records of before there was a checksum, and before planks told what layer they were sawn for.</summary>
    public const string OlderSchema = "plankfit-cut/1";

    /// <summary>A plank takes some thirty kilobytes, bytes.</summary>
    public const int MostBytes = 64 * 1024 * 1024;

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = false,
        AllowDuplicateProperties = false,
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
        UnmappedMemberHandling = System.Text.Json.Serialization.JsonUnmappedMemberHandling.Disallow,
    };

    /// <summary>What it is called where the job does not say: it is found by that beside the job.</summary>
    public const string UsualName = "sawn-planks.json";

    /// <summary>The record as it was before the last change of it, beside it.</summary>
    public static string BackupOf(string record) => record + ".bak";

    /// <param name="boards">That they came from; none where no plan of cutting was at hand.</param>
    public static string Write(
        IEnumerable<SawnPlank> planks,
        ImmutableArray<BoardSawnInto> boards = default
    )
    {
        // One plank a line: what is sawn next is seen in a comparison of two versions.
        IEnumerable<string> lines = planks
            .OrderBy(p => p.Id.ToString(), StringComparer.Ordinal)
            .Select(p => "  " + JsonSerializer.Serialize(SawnPlankText.Of(p), Options));
        string ofBoards = boards.IsDefaultOrEmpty
            ? ""
            : $",\n \"boards\": [\n{string.Join(",\n", boards.Select(b => "  " + JsonSerializer.Serialize(SawnBoardText.Of(b), Options)))}\n ]";
        return RecordChecksum.Written(
            $"{{\n \"schema\": \"{Schema}\",\n {RecordChecksum.Empty},\n \"planks\": [\n{string.Join(",\n", lines)}\n ]{ofBoards}\n}}\n"
        );
    }

    /// <summary>Never throws for what the text holds. A record with anything amiss gives no plank at all.</summary>
    /// <param name="shown">What lengths are told in where something is amiss.</param>
    public static SawnReading Read(
        string text,
        string file,
        LengthUnit shown = LengthUnit.Millimetre
    )
    {
        bool older = text.AsSpan(0, Math.Min(text.Length, 100))
            .Contains($"\"{OlderSchema}\"", StringComparison.Ordinal);
        if (!older && RecordChecksum.WhyNot(text) is { } changed)
        {
            return SawnReading.Refused(file, changed);
        }

        try
        {
            FileText read = JsonSerializer.Deserialize<FileText>(text, Options)!;
            if (read.Schema != (older ? OlderSchema : Schema))
            {
                return SawnReading.Refused(
                    file,
                    $"schema {Quoted.Of(read.Schema)}: this program reads {Schema}"
                );
            }

            if (older && read.Checksum is not null)
            {
                return SawnReading.Refused(
                    file,
                    $"a record of schema {OlderSchema} has no checksum: it was changed since `plankfit sawn` wrote it"
                );
            }

            ImmutableArray<SawnPlank> planks = [.. read.Planks.Select(p => p.ToPlank())];
            foreach (SawnPlank plank in planks)
            {
                if (SawnPlankFaults.Of(plank, shown) is { } fault)
                {
                    return SawnReading.Refused(file, $"plank {plank.Id}: {fault}");
                }
            }

            return planks.GroupBy(p => p.Id).FirstOrDefault(g => g.Count() > 1) is { } twice
                ? SawnReading.Refused(file, $"plank {twice.Key} is recorded twice")
                : new(planks, null, older)
                {
                    Boards = [.. (read.Boards ?? []).Select(b => b.ToBoard())],
                };
        }
        catch (Exception e)
            when (e
                    is JsonException
                        or FormatException
                        or NullReferenceException
                        or ArgumentException
                        or InvalidOperationException
                        or IndexOutOfRangeException
            )
        {
            return SawnReading.Refused(
                e is JsonException { LineNumber: { } at }
                    ? FormattableString.Invariant($"{file}, line {at + 1}")
                    : file,
                "this is not a record of sawn planks as `plankfit sawn` writes it"
            );
        }
    }

    private sealed record FileText(
        string Schema,
        SawnPlankText[] Planks,
        string? Checksum = null,
        SawnBoardText[]? Boards = null
    );
}
