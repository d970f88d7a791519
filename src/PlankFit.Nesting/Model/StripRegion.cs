using System.Collections.Immutable;
using PlankFit.Planking.Stock;

namespace PlankFit.Nesting.Model;

/// <summary>
/// What of a board may be used, in the frame of its strips: u along the grain, v across, both in mm from the corner where marked end and marked edge meet; in a
/// sheet whose grain runs across, v from the marked end and u from the edge that is not marked.
/// </summary>
/// <param name="Faults">To be cut out, each a box; only those that the region reaches.</param>
internal sealed record StripRegion(
    double LeastU,
    double MostU,
    double LeastV,
    double MostV,
    ImmutableArray<StripFault> Faults
)
{
    public double LengthMm => MostU - LeastU;

    public double WidthMm => MostV - LeastV;

    /// <summary>Some fault leaves part of the width clear, so that it matters where a lane lies.</summary>
    public bool IsUneven => Faults.Any(f => f.LowV > LeastV || f.HighV < MostV);

    /// <summary>How wide it is, and how wide beside and between faults that take part of the width.</summary>
    public IEnumerable<double> ClearWidths()
    {
        double[] from = [LeastV, .. Faults.Select(f => f.HighV)],
            to = [MostV, .. Faults.Select(f => f.LowV)];
        return from.SelectMany(_ => to, (low, high) => high - low).Where(w => w > 0).Distinct();
    }

    public static StripRegion Of(StockBoard board, NestSpec spec)
    {
        double x0 = board.MarkedEndMm + spec.EndMm,
            x1 = board.LengthMm - board.OtherEndMm - spec.EndMm,
            y0 = spec.EdgeMm,
            y1 = board.WidthMm - spec.EdgeMm;
        IEnumerable<(double FromX, double ToX, double FromY, double ToY)> boxes =
            from fault in board.Faults
            select (
                FromX: fault.FromMm,
                ToX: fault.ToMm,
                FromY: fault.LowMm ?? 0,
                ToY: fault.HighMm ?? board.WidthMm
            );
        return board.GrainAcross
            ? new(
                board.WidthMm - y1,
                board.WidthMm - y0,
                x0,
                x1,
                [
                    .. boxes.Select(b => new StripFault(
                        board.WidthMm - b.ToY,
                        board.WidthMm - b.FromY,
                        b.FromX,
                        b.ToX
                    )),
                ]
            )
            : new(
                x0,
                x1,
                y0,
                y1,
                [.. boxes.Select(b => new StripFault(b.FromX, b.ToX, b.FromY, b.ToY))]
            );
    }

    /// <summary>The clear stretches of a lane, from its beginning; two stretches are never nearer than a kerf.</summary>
    public ImmutableArray<ClearStretch> Clear(double lowV, double highV, double kerfMm)
    {
        ImmutableArray<ClearStretch>.Builder clear = ImmutableArray.CreateBuilder<ClearStretch>();
        double from = LeastU;
        foreach (
            StripFault fault in Faults
                .Where(f => f.LowV < highV && f.HighV > lowV && f.ToU > LeastU && f.FromU < MostU)
                .Select(f => f.AtLeast(kerfMm))
                .OrderBy(f => f.FromU)
        )
        {
            if (fault.FromU > from)
            {
                clear.Add(new(from, fault.FromU));
            }

            from = Math.Max(from, fault.ToU);
        }

        if (MostU > from)
        {
            clear.Add(new(from, MostU));
        }

        return clear.ToImmutable();
    }
}

/// <summary>A box to be cut out, along and across the grain.</summary>
internal readonly record struct StripFault(double FromU, double ToU, double LowV, double HighV)
{
    /// <summary>As long as a kerf at least: what lies on both sides of it is sawn apart.</summary>
    public StripFault AtLeast(double kerfMm)
    {
        double more = Math.Max(0, kerfMm - (ToU - FromU)) / 2;
        return this with { FromU = FromU - more, ToU = ToU + more };
    }
}

/// <summary>A stretch of a lane without faults, mm along the grain.</summary>
internal readonly record struct ClearStretch(double FromU, double ToU)
{
    public double LengthMm => ToU - FromU;
}
