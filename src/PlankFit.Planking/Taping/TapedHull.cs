using System.Collections.Immutable;
using PlankFit.Planking.Adjusting;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.Trust;

namespace PlankFit.Planking.Taping;

/// <summary>The hull as all readings of a tape together make it likeliest, with the table as drawn and what is trusted of it; and what is to be thought of the readings.</summary>
/// <param name="Cells">Every cell that moved, both sides.</param>
/// <param name="Before">What was known of the errors of the table before, as far as the readings do not show it to be too hopeful: widened where they do.</param>
/// <param name="After">The errors of the table, starboard's cells, then port's.</param>
/// <param name="Tables">What is planked; null where the corrections are too wild to be taken unasked, or every reading is a slip.</param>
public sealed record TapedHull(
    ImmutableArray<TapedRow> Rows,
    ImmutableArray<TapedCell> Cells,
    Estimate Before,
    Estimate After,
    TapedWhole Whole,
    TapedTables? Tables
)
{
    public ImmutableArray<Finding> Findings { get; init; } = [];

    /// <summary>What hangs on putting slips aside: the number of the table that would stand furthest from where it was moved to if they were counted for less instead (<see cref="HuberFit"/>), and by how much; null where none was put aside.</summary>
    public (string Cell, double ByMm)? AllCounted { get; init; }

    /// <summary>What is known of the hull that is planked: where nothing is planked to what was taped, what was known before.</summary>
    public Estimate Planked => Tables is null ? Before : After;

    /// <summary>The same, a side's cells each: their covariance.</summary>
    public SidesKnown Sides
    {
        get
        {
            int n = Planked.Values.Count / 2;
            return new(
                Planked.Covariance.SubMatrix(0, n, 0, n),
                Planked.Covariance.SubMatrix(n, n, n, n)
            );
        }
    }

    public IEnumerable<TapedRow> Slips => Rows.Where(r => !r.IsKept);
}

/// <summary>One reading against the hull as drawn and as adjusted.</summary>
/// <param name="DrawnMm">What a tape reads on the hull as drawn.</param>
/// <param name="LimitMm">By which it may differ from that, 19 times in 20, if [trust] is right.</param>
/// <param name="AfterMm">What a tape reads on the hull as adjusted.</param>
/// <param name="Held">Against all others; of one put aside, as it stood when it was.</param>
public sealed record TapedRow(
    TapeReading Reading,
    double DrawnMm,
    double LimitMm,
    double AfterMm,
    SlipRow Held,
    bool IsKept
)
{
    public double OffMm => Reading.Mm - DrawnMm;
}

/// <summary>A number of the table as it was moved.</summary>
/// <param name="Name">As the job would name it: chine/half-breadth/6.</param>
/// <param name="SigmaMm">What was known of it before, one standard deviation.</param>
/// <param name="AfterSigmaMm">And is afterwards.</param>
public sealed record TapedCell(
    Side Side,
    string Name,
    double ByMm,
    double SigmaMm,
    double AfterSigmaMm,
    bool IsWild
);

/// <summary>All readings that are kept, as a whole.</summary>
/// <param name="Misfit">Chi-square of as many degrees as there are readings, if [trust] is right.</param>
/// <param name="Limit">Kept 19 times in 20.</param>
/// <param name="Scale">By which the variances of what [trust] says were widened: 1 where readings go with it.</param>
public sealed record TapedWhole(int Readings, double Misfit, double Limit, double Scale)
{
    public bool IsWithin => Misfit <= Limit;
}
