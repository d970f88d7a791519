using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fairness;

/// <summary>A station that does not stand where the table says, as the lines that run at a slope there agree.</summary>
/// <param name="Station">Its name; StationIndex its place in the table.</param>
/// <param name="WrittenMm">Its position as written, x.</param>
/// <param name="ForetoldMm">Where the lines would be fair: a hint to check against.</param>
/// <param name="Lines">What each line is out by, were the position right.</param>
/// <param name="How">The likeliest slip: "1 in misread"; null where none fits.</param>
/// <param name="Probable">Whether that slip is all but sure.</param>
public sealed record StationSuspicion(
    string Station,
    int StationIndex,
    double WrittenMm,
    double ForetoldMm,
    ImmutableArray<Suspicion> Lines,
    string? How,
    bool Probable
)
{
    /// <summary>"station 5, position".</summary>
    public string Where => $"station {Station}, position";

    /// <summary>How far it stands from where it is written, mm; positive aft.</summary>
    public double OutMm => ForetoldMm - WrittenMm;

    /// <summary>The most that a line would be out by, were the position right, mm.</summary>
    public double LinesOutMm => Lines.Max(l => Math.Abs(l.ResidualMm));

    public Finding ToFinding(LengthUnit table, LengthUnit shown, AsWritten? asWritten = null)
    {
        string lines = string.Join(
            ", ",
            Lines.Select(l => $"{l.Line} {OffsetRow.Word(l.Measure)}")
        );
        string size = LengthText.ForPaper(Math.Abs(OutMm), shown);
        string where = OutMm > 0 ? "further aft" : "further forward";
        string how = How is null ? "" : $" ({How}{(Probable ? "" : "?")})";
        return AsWritten.Judged(
            asWritten,
            OffsetCell.PositionOf(Station),
            LinesOutMm,
            new(
                Severity.Warning,
                Where,
                $"{lines} would all run fair if the station stood {size} {where} than it is written{how}. "
                    + "Look at the positions in the source, or measure; change the table only to what these bear out"
            )
            {
                Rank = Rank.DoNotSaw,
            },
            $"the lines expect it at about {TableText.Of(ForetoldMm, table)}"
        );
    }
}
