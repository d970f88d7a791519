using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Planking.Findings;

namespace PlankFit.Planking.Glue;

/// <summary>What is down already: the rest is planned from there on.</summary>
public sealed record GlueProgress(ImmutableArray<GlueDone> Rows)
{
    public static readonly GlueProgress None = new([]);

    /// <summary>The file that has all of it.</summary>
    public const string UsualSource = "progress.csv";

    /// <summary>The file that says so.</summary>
    public string Source { get; init; } = UsualSource;

    /// <summary>When the last of it was down, minutes from midnight of the first day; null where nothing is.</summary>
    public double? Latest => Rows.IsEmpty ? null : Rows.Max(r => r.At);

    /// <summary>The highest number of a batch that was mixed, as in B07; 0 where none is named so.</summary>
    public int LastBatch =>
        Rows.Select(r =>
                r.Batch is ['B' or 'b', .. var number]
                && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int n)
                    ? n
                    : 0
            )
            .DefaultIfEmpty(0)
            .Max();

    public double? DownAt(PlankId plank) => Last(Rows.Where(r => r.Plank == plank));

    /// <summary>When a cloth's side was wetted out; null where it is still to be.</summary>
    public double? WettedAt(string cloth, Side side) => CoatedAt(cloth, 0, side);

    /// <summary>When a coat was on, over the outermost cloth; 0 for the cloth itself.</summary>
    public double? CoatedAt(string cloth, int coat, Side side) =>
        Last(Rows.Where(r => r.Cloth == cloth && r.Coat == coat && r.Side == side));

    /// <summary>Whether a side of it is on by what lies over it alone, at an hour that nobody wrote down.</summary>
    public bool IsTaken(string cloth, int coat) =>
        Rows.Any(r => r.IsTaken && r.Cloth == cloth && r.Coat == coat);

    /// <summary>When that part was laid, be it a plank, cloth, a coat over it, or what is laid last; null where it is still to be.</summary>
    public double? LaidAt(GlueDone part) =>
        part.Plank is { } plank ? DownAt(plank)
        : part.Finish is { } finish ? FinishedAt(finish, part.Side)
        : CoatedAt(part.Cloth!, part.Coat, part.Side);

    /// <summary>When a side of the fairing or of a fillet was laid, by the stage's name.</summary>
    public double? FinishedAt(string stage, Side side) =>
        Last(
            Rows.Where(r =>
                string.Equals(r.Finish, stage, StringComparison.OrdinalIgnoreCase) && r.Side == side
            )
        );

    private static double? Last(IEnumerable<GlueDone> rows) => rows.Max(r => (double?)r.At);
}

/// <summary>A plank that is down, a cloth's side that is wetted out, or a side of fairing or fillet.</summary>
/// <param name="Plank">Null for cloth.</param>
/// <param name="Cloth">The layer's name; null for a plank.</param>
/// <param name="At">When, minutes from midnight of the first day.</param>
public sealed record GlueDone(PlankId? Plank, string? Cloth, Side Side, double At)
{
    public string Batch { get; init; } = "";

    /// <summary>As progress.csv has it: S1-10, core cloth starboard, outside cloth coat 1 port, fairing port.</summary>
    public string Name =>
        Plank is { } plank
            ? plank.ToString()
            : $"{Finish ?? Cloth}{(Coat > 0 ? FormattableString.Invariant($" coat {Coat}") : "")} {Side.ToString().ToLowerInvariant()}";

    /// <summary>Which coat over that cloth; 0 for the cloth itself.</summary>
    public int Coat { get; init; }

    /// <summary>The stage of fairing or fillet that it is a side of, fairing or fillet chine log; null for planks and cloth.</summary>
    public string? Finish { get; init; }

    /// <summary>Nobody wrote it down: it lies under what is on, and was on by then at the latest.</summary>
    public bool IsTaken { get; init; }

    /// <summary>In the shop; null where it was not written down.</summary>
    public double? Celsius { get; init; }
}
