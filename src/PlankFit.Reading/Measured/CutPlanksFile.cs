using System.Collections.Immutable;
using System.Text.Json;
using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>
/// The record of planks that are sawn, cut-planks.json, schema plankfit-cut/2: written by `plankfit cut`, read by every lay-out after it. Lengths in mm,
/// angles in degrees, with all their digits; and a checksum, for it cannot be made again.
/// </summary>
public static class CutPlanksFile
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

    /// <summary>The record as it was before the last change of it, beside it.</summary>
    public static string BackupOf(string record) => record + ".bak";

    public static string Write(IEnumerable<CutPlank> planks)
    {
        // One plank a line: what is sawn next is seen in a comparison of two versions.
        IEnumerable<string> lines = planks
            .OrderBy(p => p.Id.ToString(), StringComparer.Ordinal)
            .Select(p => "  " + JsonSerializer.Serialize(PlankText.Of(p), Options));
        return RecordChecksum.Written(
            $"{{\n \"schema\": \"{Schema}\",\n {RecordChecksum.Empty},\n \"planks\": [\n{string.Join(",\n", lines)}\n ]\n}}\n"
        );
    }

    /// <summary>Never throws for what the text holds. A record with anything amiss gives no plank at all.</summary>
    public static CutReading Read(string text, string file)
    {
        bool older = text.AsSpan(0, Math.Min(text.Length, 100))
            .Contains($"\"{OlderSchema}\"", StringComparison.Ordinal);
        if (!older && RecordChecksum.WhyNot(text) is { } changed)
        {
            return CutReading.Refused(file, changed);
        }

        try
        {
            FileText read = JsonSerializer.Deserialize<FileText>(text, Options)!;
            if (read.Schema != (older ? OlderSchema : Schema))
            {
                return CutReading.Refused(
                    file,
                    $"schema {Quoted.Of(read.Schema)}: this program reads {Schema}"
                );
            }

            if (older && read.Checksum is not null)
            {
                return CutReading.Refused(
                    file,
                    $"a record of schema {OlderSchema} has no checksum: it was changed since `plankfit cut` wrote it"
                );
            }

            ImmutableArray<CutPlank> planks = [.. read.Planks.Select(p => p.ToPlank())];
            foreach (CutPlank plank in planks)
            {
                if (CutPlankFaults.Of(plank) is { } fault)
                {
                    return CutReading.Refused(file, $"plank {plank.Id}: {fault}");
                }
            }

            return planks.GroupBy(p => p.Id).FirstOrDefault(g => g.Count() > 1) is { } twice
                ? CutReading.Refused(file, $"plank {twice.Key} is recorded twice")
                : new(planks, null, older);
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
            return CutReading.Refused(
                e is JsonException { LineNumber: { } at }
                    ? FormattableString.Invariant($"{file}, line {at + 1}")
                    : file,
                "this is not a record of sawn planks as `plankfit cut` writes it"
            );
        }
    }

    private sealed record FileText(string Schema, PlankText[] Planks, string? Checksum = null);

    private sealed record PlankText(
        string Id,
        string Revision,
        double[][] Outline,
        double[][] Net,
        double[][] Cut,
        double[][] ForwardSeam,
        double[][] ForwardFlat,
        double[][] AfterSeam,
        double[][] AfterFlat,
        EndText[] Ends,
        CutSizesText Sizes,
        LayerText? SawnFor = null
    )
    {
        public static PlankText Of(CutPlank p) =>
            new(
                p.Id.ToString(),
                p.Revision,
                From(p.Outline),
                From(p.FlatNet),
                From(p.FlatCut),
                From(p.ForwardSeam),
                From(p.ForwardFlat),
                From(p.AfterSeam),
                From(p.AfterFlat),
                [.. p.Ends.Select(EndText.Of)],
                CutSizesText.Of(p.Sizes),
                p.SawnFor is { } layer ? LayerText.Of(layer) : null
            );

        public CutPlank ToPlank() =>
            new(
                PlankId.Parse(Id) ?? throw new FormatException(),
                Revision,
                Space(Outline),
                Flat(Net),
                Flat(Cut),
                Space(ForwardSeam),
                Flat(ForwardFlat),
                Space(AfterSeam),
                Flat(AfterFlat),
                [.. Ends.Select(e => e.ToEnd())],
                Sizes.ToSizes()
            )
            {
                SawnFor = SawnFor?.ToLayer(),
            };
    }

    private sealed record LayerText(string Name, double ThicknessMm, string Heads)
    {
        public static LayerText Of(CutLayer l) =>
            new(l.Name, l.ThicknessMm, l.Heads == Planking.Heads.Aft ? "aft" : "forward");

        public CutLayer ToLayer() =>
            new(
                Name,
                ThicknessMm,
                Heads switch
                {
                    "aft" => Planking.Heads.Aft,
                    "forward" => Planking.Heads.Forward,
                    _ => throw new FormatException(),
                }
            );
    }

    private sealed record EndText(
        string At,
        string Cut,
        double CutDegrees,
        double[] Bevels,
        double? OverhangMm,
        double AllowanceMm,
        double[][] Net,
        double[][] Outline,
        double[][] OuterLine,
        double[][] InnerLine
    )
    {
        public static EndText Of(CutEnd e) =>
            new(
                e.At.ToString().ToLowerInvariant(),
                e.Cut == EndCut.Fit ? "fit" : "left long",
                Whole(e.CutDegrees),
                [Whole(e.BevelDegrees), Whole(e.BevelAtLeastN), Whole(e.BevelAtGreatestN)],
                e.OverhangMm,
                e.AllowanceMm,
                From(e.NetLine),
                From(e.Outline),
                From(e.OuterLine),
                From(e.InnerLine)
            );

        public CutEnd ToEnd() =>
            new(
                At switch
                {
                    "keel" => HullEdge.Keel,
                    "chine" => HullEdge.Chine,
                    "stem" => HullEdge.Stem,
                    "transom" => HullEdge.Transom,
                    _ => throw new FormatException(),
                },
                Cut switch
                {
                    "fit" => EndCut.Fit,
                    "left long" => EndCut.LeftLong,
                    _ => throw new FormatException(),
                },
                CutDegrees,
                Bevels.Length == 3 ? Bevels[0] : throw new FormatException(),
                Bevels[1],
                Bevels[2],
                OverhangMm,
                AllowanceMm,
                Flat(Net),
                Space(Outline),
                Flat(OuterLine),
                Flat(InnerLine)
            );
    }

    /// <summary>Every digit, so that what is read back is what was sawn; no minus before a nought.</summary>
    internal static double Whole(double v) => v + 0.0;

    private static double[][] From(ImmutableArray<Vec2> points) =>
        [.. points.Select(p => new[] { Whole(p.X), Whole(p.Y) })];

    private static double[][] From(ImmutableArray<Vec3> points) =>
        [.. points.Select(p => new[] { Whole(p.X), Whole(p.Y), Whole(p.Z) })];

    private static ImmutableArray<Vec2> Flat(double[][] points) =>
        [.. points.Select(p => p.Length == 2 ? new Vec2(p[0], p[1]) : throw new FormatException())];

    private static ImmutableArray<Vec3> Space(double[][] points) =>
        [
            .. points.Select(p =>
                p.Length == 3 ? new Vec3(p[0], p[1], p[2]) : throw new FormatException()
            ),
        ];
}
