using System.Collections.Immutable;
using PlankFit.App.Showing;
using PlankFit.Planking.Laying;
using PlankFit.Planking.Whole;

namespace PlankFit.Pages.Sessions;

/// <summary>How the search for a plan of cutting stands.</summary>
/// <param name="Turn">Of the planks that the boards found are of; null where there are none yet.</param>
/// <param name="What">The best so far in words; null where nothing is searched.</param>
/// <param name="Part">How much of its time is gone, from 0 to 1.</param>
/// <param name="Improved">Every better plan or bound on the way, the first first.</param>
internal sealed record BoardsAnswer(
    int? Turn,
    string? What,
    double Part,
    ImmutableArray<string> Improved,
    string Fault
)
{
    /// <summary>By plank the boards that it comes out of.</summary>
    public ImmutableDictionary<string, string> Boards { get; init; } =
        ImmutableDictionary<string, string>.Empty;
}

/// <summary>Searches for a plan of cutting when it is asked to, and tells of every better one; a stop keeps the best.</summary>
internal sealed class BoardSearch(JobSession session) : IAsyncDisposable
{
    private readonly JobSession session = session;
    private const int MostImproved = 200;

    /// <summary>What the terminal says beside it is not said here.</summary>
    private const string OnTerminal = " (Ctrl-C keeps the best so far)";

    private readonly Lock gate = new();
    private BoardsAnswer now = new(null, null, 0, [], "");
    private BottomPlan? found;
    private CancellationTokenSource? stop;
    private Task work = Task.CompletedTask;

    public BoardsAnswer Now
    {
        get
        {
            lock (gate)
            {
                return now;
            }
        }
    }

    /// <summary>The plan of that turn with its boards; without them where they were not searched for.</summary>
    public BottomPlan With(Laid laid)
    {
        lock (gate)
        {
            return found is not null && now.Turn == laid.Turn
                ? laid.Plan with
                {
                    Nest = found.Nest,
                }
                : laid.Plan;
        }
    }

    /// <summary>Begins to search, unless it is searching; false where there are no planks, or no stock is named.</summary>
    public bool Begin()
    {
        lock (gate)
        {
            if (now.What is not null)
            {
                return true;
            }

            if (session.Now.Good is not { Plan.Job.Nest: not null } laid)
            {
                return false;
            }

            stop?.Dispose();
            stop = new();
            now = now with { What = "", Part = 0, Improved = [], Fault = "" };
            CancellationToken enough = stop.Token;
            work = Task.Run(() => Search(laid, enough), CancellationToken.None);
            return true;
        }
    }

    /// <summary>Ends the search; what it has found is kept.</summary>
    public void Stop()
    {
        lock (gate)
        {
            stop?.Cancel();
        }
    }

    public async ValueTask DisposeAsync()
    {
        Stop();
        await work;
        stop?.Dispose();
    }

    private void Search(Laid laid, CancellationToken enough)
    {
        try
        {
            BottomPlan boards = ShownBoards.Search(laid.Plan, found, new Told(this), enough);
            lock (gate)
            {
                found = boards;
                now = new(laid.Turn, null, 1, now.Improved, "")
                {
                    Boards = ShownBoards.ByPlank(boards),
                };
            }
        }
        catch (Exception e)
        {
            lock (gate)
            {
                now = now with { What = null, Fault = e.Message };
            }
        }

        session.Listeners.Tell("boards");
    }

    private sealed class Told(BoardSearch of) : IProgress<PlanProgress>
    {
        public void Report(PlanProgress value)
        {
            string what = value.Doing.Replace(OnTerminal, "", StringComparison.Ordinal);
            lock (of.gate)
            {
                of.now = of.now with
                {
                    What = what,
                    Part = value.Part,
                    Improved =
                        of.now.Improved.LastOrDefault() == what ? of.now.Improved
                        : of.now.Improved.Length < MostImproved ? of.now.Improved.Add(what)
                        : of.now.Improved.RemoveAt(0).Add(what),
                };
            }

            of.session.Listeners.Tell("boards");
        }
    }
}
