using System.Collections.Immutable;
using System.Text.Json;
using PlankFit.Geometry;
using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>
/// The record of planks that are sawn, cut-planks.json, schema plankfit-cut/1: written by `plankfit cut`, read by every lay-out after it. Lengths in mm,
/// angles in degrees, with all their digits.
/// </summary>
public static class CutPlanksFile
{
    public const string Schema = "plankfit-cut/1";

    /// <summary>A plank takes some thirty kilobytes, bytes.</summary>
    public const int MostBytes = 64 * 1024 * 1024;

    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = false,
        UnmappedMemberHandling = System.Text.Json.Serialization.JsonUnmappedMemberHandling.Disallow,
    };

    public static string Write(IEnumerable<CutPlank> planks)
    {
        // One plank a line: what is sawn next is seen in a comparison of two versions.
        IEnumerable<string> lines = planks
            .OrderBy(p => p.Id, StringComparer.Ordinal)
            .Select(p => "  " + JsonSerializer.Serialize(PlankText.Of(p), Options));
        return $"{{\n \"schema\": \"{Schema}\",\n \"planks\": [\n{string.Join(",\n", lines)}\n ]\n}}\n";
    }

    /// <summary>Never throws for what the text holds.</summary>
    /// <param name="plankLayers">How many layers of planks the job has; a record of another is not this job's.</param>
    public static (ImmutableArray<CutPlank> Planks, Finding? Fault) Read(
        string text,
        string file,
        int plankLayers = int.MaxValue
    )
    {
        try
        {
            FileText read = JsonSerializer.Deserialize<FileText>(text, Options)!;
            if (read.Schema != Schema)
            {
                return (
                    [],
                    new(
                        Severity.Error,
                        file,
                        $"schema {Quoted.Of(read.Schema ?? "")}: this program reads {Schema}"
                    )
                );
            }

            ImmutableArray<CutPlank> planks = [.. read.Planks.Select(p => p.ToPlank())];
            if (planks.FirstOrDefault(p => p.Layer > plankLayers) is { } stranger)
            {
                return (
                    [],
                    new(
                        Severity.Error,
                        file,
                        $"plank {stranger.Id} is of layer {stranger.Layer}, and the job has {plankLayers}: is the record another job's?"
                    )
                );
            }

            return planks.GroupBy(p => p.Id).FirstOrDefault(g => g.Count() > 1) is { } twice
                ? (
                    [],
                    new(
                        Severity.Error,
                        file,
                        $"plank {twice.Key} is recorded twice: take one of the two out"
                    )
                )
                : (planks, null);
        }
        catch (Exception e)
            when (e
                    is JsonException
                        or FormatException
                        or NullReferenceException
                        or ArgumentException
                        or InvalidOperationException
            )
        {
            string line = e is JsonException { LineNumber: { } at }
                ? FormattableString.Invariant($"{file}, line {at + 1}")
                : file;
            return (
                [],
                new(
                    Severity.Error,
                    line,
                    "this is not a record of sawn planks as `plankfit cut` writes it: restore it from a copy, or take it out of [standing] and mark the planks again"
                )
            );
        }
    }

    private sealed record FileText(string? Schema, PlankText[] Planks);

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
        CutSizesText Sizes
    )
    {
        public static PlankText Of(CutPlank p) =>
            new(
                p.Id,
                p.Revision,
                From(p.Outline),
                From(p.FlatNet),
                From(p.FlatCut),
                From(p.ForwardSeam),
                From(p.ForwardFlat),
                From(p.AfterSeam),
                From(p.AfterFlat),
                [.. p.Ends.Select(EndText.Of)],
                CutSizesText.Of(p.Sizes)
            );

        public CutPlank ToPlank() =>
            new(
                PlankIds.Parse(Id) is null ? throw new FormatException() : Id,
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
                Enum.Parse<HullEdge>(At, ignoreCase: true),
                Cut == "fit" ? EndCut.Fit : EndCut.LeftLong,
                CutDegrees,
                Bevels[0],
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
