using System.Collections.Immutable;

namespace PlankFit.Planking.Hulls;

/// <summary>
/// A table of offsets as read: stations in order from forward (smaller x) to aft, and the lines through them. Millimetres;
/// x grows aft, half-breadths are to starboard, z up. Nothing is faired or filled in here.
/// </summary>
public sealed record OffsetTable(ImmutableArray<Station> Stations, ImmutableArray<OffsetLine> Lines)
{
    public OffsetLine? Find(string line) => Lines.FirstOrDefault(l => l.Name == line);

    /// <summary>A line that is known to be there: what a job names is asked for before anything is laid.</summary>
    /// <exception cref="ArgumentException">It is not.</exception>
    public OffsetLine Named(string line) =>
        Find(line) ?? throw new ArgumentException(NoLine(line), nameof(line));

    /// <summary>What is told where a line is asked for that is not there.</summary>
    public static string NoLine(string line) => $"the table has no line '{line}'";
}

/// <summary>A station: its name as printed in the table's head and its x, mm.</summary>
public sealed record Station(string Name, double PositionMm);

/// <summary>One longitudinal line; one cell a station and measure, null where the table is empty.</summary>
/// <param name="PositionsMm">The line's own x where it does not lie in the station's plane; null where it does.</param>
public sealed record OffsetLine(
    string Name,
    ImmutableArray<double?> PositionsMm,
    ImmutableArray<double?> HeightsMm,
    ImmutableArray<double?> HalfBreadthsMm
)
{
    /// <summary>Whether it has a point at a station, height and half-breadth both.</summary>
    public bool Has(int station) =>
        HeightsMm[station] is not null && HalfBreadthsMm[station] is not null;

    /// <summary>Stations at which it has a point.</summary>
    public ImmutableArray<int> Known => [.. Enumerable.Range(0, HeightsMm.Length).Where(Has)];

    /// <summary>The first and the last of these; 0 and -1 where there is none.</summary>
    public (int First, int Last) Run =>
        Known is [var first, .., var last] ? (first, last)
        : Known is [var only] ? (only, only)
        : (0, -1);
}
