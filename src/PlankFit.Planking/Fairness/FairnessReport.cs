using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fairness;

/// <summary>How fair a table of offsets is.</summary>
/// <param name="Rows">Every row that was judged, in the table's order.</param>
/// <param name="Suspicions">Cells that do not lie fair, the worst first.</param>
/// <param name="Stations">Stations that do not stand where they are written; what is out there because of it is not among the cells.</param>
/// <param name="Ends">Names of the stations at which a row ends, in the table's order.</param>
/// <param name="NotJudged">Rows that could not be judged, and why.</param>
public sealed record FairnessReport(
    ImmutableArray<JudgedRow> Rows,
    ImmutableArray<Suspicion> Suspicions,
    ImmutableArray<StationSuspicion> Stations,
    ImmutableArray<string> Ends,
    ImmutableArray<Finding> NotJudged
)
{
    /// <summary>What no run of a line can tell, and what to do about it; null where no row was judged.</summary>
    public string? TapeTheEnds =>
        Ends.IsEmpty
            ? null
            : $"Not judged: the ends of the lines, station{(Ends.Length == 1 ? "" : "s")} {string.Join(", ", Ends)}. "
                + "An end station cannot be judged by fairness, for nothing beyond it bears out what it says: tape it on the hull or its frames, and hold the tape against the table, before anything is sawn.";

    /// <summary>All that a person should know, suspicions first.</summary>
    public ImmutableArray<Finding> Findings(LengthUnit unit, AsWritten? asWritten = null) =>
        [
            .. Stations.Select(s => s.ToFinding(unit, unit, asWritten)),
            .. Suspicions.Select(s => s.ToFinding(unit, unit, asWritten)),
            .. NotJudged,
        ];

    /// <summary>The stations at which something stands out that the job does not have as written, in the table's order.</summary>
    public ImmutableArray<string> StandingOut(AsWritten asWritten) =>
        [
            .. Stations
                .Where(s => !asWritten.Has(OffsetCell.PositionOf(s.Station)))
                .Select(s => (s.StationIndex, s.Station))
                .Concat(
                    Suspicions
                        .Where(s => !asWritten.Has(s.Cell.Key))
                        .Select(s => (s.StationIndex, s.Station))
                )
                .Distinct()
                .Order()
                .Select(s => s.Station),
        ];
}

/// <summary>A row with what its picture needs.</summary>
/// <param name="SecondDifferences">At each inner point, 1/mm; two fewer than points.</param>
/// <param name="Suspicions">The row's own, the worst first, with those that come of a station out of place.</param>
public sealed record JudgedRow(
    OffsetRow Row,
    ImmutableArray<double> SecondDifferences,
    ImmutableArray<Suspicion> Suspicions
);
