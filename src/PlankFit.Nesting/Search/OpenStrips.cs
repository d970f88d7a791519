using PlankFit.Nesting.Mix;
using PlankFit.Nesting.Model;
using PlankFit.Nesting.Rows;

namespace PlankFit.Nesting.Search;

/// <summary>The strips of all boards begun, in their order, and the rows that grow in them. Thousands of things may ask thousands of strips: most are passed over by two numbers.</summary>
internal sealed class OpenStrips(NestProblem problem, RowBook book)
{
    /// <summary>So often a strip is tried against its likelihood, of all things together: some tenths of a second.</summary>
    private const int MostUnlikely = 20_000;

    /// <summary>After a thing that lacked so much, one shorter by this part of it may still fit, turned otherwise: tried, our own, no source.</summary>
    private const double Half = 0.5;

    /// <summary>A row may be longer than its strip by what a double loses in a sum, mm.</summary>
    private const double FitsMm = 1e-7;

    private readonly List<Strip> strips = [];
    private int unlikely;

    /// <summary>By strip, its kind, the most that a thing more may ask, wherever it comes to lie, and what there is hope for after what did not fit.</summary>
    private readonly List<(int Kind, double MostMm, double HopedMm)> room = [];

    /// <summary>The rows, by the board that they are in.</summary>
    public IEnumerable<(int Opened, LaneRow Row)> Filled =>
        strips
            .Where(s => s.Row is not null)
            .Select(s => (s.Opened, new LaneRow(s.Lane, s.Stretch, s.Row!)));

    /// <summary>All strips of a board more.</summary>
    /// <param name="opened">Which of the boards begun.</param>
    public void Add(int opened, int board, Ripping ripping)
    {
        for (int l = 0; l < ripping.Lanes.Length; l++)
        {
            RippedLane lane = ripping.Lanes[l];
            int kind = problem.Kind(lane.Class, problem.Boards[board].Sort);
            for (int s = 0; s < lane.Stretches.Length; s++)
            {
                strips.Add(new(opened, l, s, lane.Stretches[s].LengthMm));
                room.Add((kind, double.PositiveInfinity, double.PositiveInfinity));
            }
        }
    }

    /// <summary>Lays a thing into the first strip with room.</summary>
    /// <param name="quick">What lies in a strip already keeps its order.</param>
    /// <param name="likely">Strips that proved too short for another thing are passed over for those nearly as large.</param>
    public bool Take(int thing, bool quick, bool likely)
    {
        double least =
            problem.Ends.SizeMm(thing)
            + Math.Min(
                0,
                Math.Min(problem.Ends.AtRowEndMm(thing, 0), problem.Ends.AtRowEndMm(thing, 1))
            );
        for (int s = 0; s < strips.Count; s++)
        {
            (int kind, double most, double hoped) = room[s];
            if (
                (likely || unlikely >= MostUnlikely ? hoped : most) < least
                || !problem.Serves(kind, thing)
            )
            {
                continue;
            }

            unlikely += hoped < least ? 1 : 0;

            if (Grown(strips[s], thing, quick, out double lacks) is { } row)
            {
                strips[s].Row = row;
                most = strips[s].LengthMm - Sum(row) + FitsMm;
                room[s] = (kind, most, most);
                return true;
            }

            room[s] = (kind, most, Math.Min(hoped, least - (lacks * Half)));
        }

        return false;
    }

    /// <summary>What a row asks at the least beside any other thing.</summary>
    private double Sum(Row row)
    {
        double sum = 0,
            end = 0;
        foreach (int i in row.Items)
        {
            sum += problem.Ends.SizeMm(i);
            end = Math.Min(
                end,
                Math.Min(problem.Ends.AtRowEndMm(i, 0), problem.Ends.AtRowEndMm(i, 1))
            );
        }

        return sum + end;
    }

    /// <summary>The row with a thing more; null where it does not fit.</summary>
    /// <param name="lacksMm">What is missing there.</param>
    private Row? Grown(Strip strip, int thing, bool quick, out double lacksMm)
    {
        lacksMm = 0;
        int[] with = strip.Row is null ? [thing] : [.. strip.Row.Items, thing];
        if (RowOrder.Least(problem.Ends, with) > strip.LengthMm)
        {
            return null;
        }

        Row row =
            strip.Row is null ? book.Of(with)
            : quick ? RowOrder.With(problem.Ends, strip.Row, thing)
            : book.With(strip.Row, thing);
        lacksMm = row.LengthMm - strip.LengthMm;
        return row.LengthMm <= strip.LengthMm + FitsMm ? row : null;
    }

    private sealed class Strip(int opened, int lane, int stretch, double lengthMm)
    {
        public int Opened => opened;

        public int Lane => lane;

        public int Stretch => stretch;

        public double LengthMm => lengthMm;

        public Row? Row { get; set; }
    }
}
