using System.Collections.Immutable;
using PlankFit.Export.Checks;
using PlankFit.Planking.Findings;

namespace PlankFit.App.Noting;

/// <summary>
/// What holds, and where a further note goes. The newer note of a plank holds. One blank read by two who did not know of one another is read twice: the later is its next reading,
/// and what the same page notes in that blank before it has seen that goes where its reading went.
/// </summary>
internal sealed record NotePlaces
{
    public static readonly NotePlaces Empty = new();

    /// <summary>The last note of a plank and field.</summary>
    public ImmutableDictionary<(string Plank, string Field), ProgressTick> Last
    {
        get;
        private init;
    } = ImmutableDictionary<(string, string), ProgressTick>.Empty;

    /// <summary>By page and the blank that it typed in: the last that went elsewhere.</summary>
    private ImmutableDictionary<
        (string Client, string TypedIn),
        ProgressTick
    > Moved { get; init; } = ImmutableDictionary<(string, string), ProgressTick>.Empty;

    public static string WhereOf(BlankId blank) => PlainText.Of($"{blank.What}, {blank.Where}");

    /// <param name="tick">As it stands in the journal.</param>
    public NotePlaces With(ProgressTick tick) =>
        this with
        {
            Last = Last.SetItem((tick.Plank, tick.Field), tick),
            Moved = tick.TypedIn is { } blank
                // Under its browser's name too: a page that is loaded anew goes on for the one before it.
                ? Moved
                    .SetItem((tick.Client, blank), tick)
                    .SetItem((BrowserOf(tick.Client), blank), tick)
                : Moved,
        };

    /// <param name="tick">With its place in the journal.</param>
    /// <returns>The note where it is to stand, and what its writer should be told; null where nothing.</returns>
    public (ProgressTick Tick, string? Said) PlaceOf(ProgressTick tick)
    {
        if (tick.Blank is not null && Followed(tick) is { } before)
        {
            tick = tick with { Field = before.Field, TypedIn = before.TypedIn };
        }

        return Unseen(tick) is { } was ? Beside(tick, was) : (tick, null);
    }

    /// <summary>What the same hand typed in that blank and does not know to stand elsewhere.</summary>
    private ProgressTick? Followed(ProgressTick tick) =>
        Moved.TryGetValue((tick.Client, tick.Field), out ProgressTick? own) && own.Seq > tick.Seen
            ? own
        : Unseen(tick) is not null
        && Moved.TryGetValue((BrowserOf(tick.Client), tick.Field), out ProgressTick? earlier)
        && earlier.Seq > tick.Seen
            ? earlier
        : null;

    /// <summary>Every page of a browser counts by itself, under the browser's name with one of its own behind a point.</summary>
    private static string BrowserOf(string client) => client.Split('.', 2)[0];

    /// <summary>What another has noted in the same place, or what came there from another blank, of which this one's writer did not know.</summary>
    private ProgressTick? Unseen(ProgressTick tick) =>
        Last.TryGetValue((tick.Plank, tick.Field), out ProgressTick? was)
        && was.Seq > tick.Seen
        && (
            BrowserOf(was.Client) != BrowserOf(tick.Client)
            || (was.TypedIn is { } from && from != (tick.TypedIn ?? tick.Field))
        )
        && (was.Value != tick.Value || (tick.Blank is not null && tick.Value.Length > 0))
            ? was
            : null;

    /// <summary>Of two readings both hold, the later as the next free one; and what its writer did not see he did not take back.</summary>
    private (ProgressTick Tick, string Said) Beside(ProgressTick tick, ProgressTick was)
    {
        string by =
            BrowserOf(was.Client) == BrowserOf(tick.Client)
                ? $"at {PlainText.Of(was.At)}"
                : $"by another at {PlainText.Of(was.At)}";
        if (tick.Blank is not { } blank)
        {
            return (
                tick,
                $"{tick.Plank}: its {tick.Field} was \"{PlainText.Of(was.Value)}\", noted {by}"
            );
        }

        string where = WhereOf(blank);
        if (was.Value.Length == 0)
        {
            return (tick, $"{where}: what was read there was taken back {by}; yours holds");
        }

        if (tick.Value.Length == 0)
        {
            return (
                tick with
                {
                    Value = was.Value,
                    ShouldMm = was.ShouldMm,
                    // Not this hand's own, so that what it types next does not stand for it.
                    TypedIn = "",
                },
                $"{where}: it was read as {PlainText.Of(was.Value)} {by}, which you had not seen: that stays"
            );
        }

        BlankId free = blank;
        while (
            free.Time < BlankId.MostTimes
            && Last.TryGetValue(("", free.ToString()), out ProgressTick? there)
            && there.Value.Length > 0
        )
        {
            free = free with { Time = free.Time + 1 };
        }

        return (
            tick with
            {
                Field = free.ToString(),
                TypedIn = tick.TypedIn ?? tick.Field,
            },
            $"{where}: it was read as {PlainText.Of(was.Value)} {by}; yours stands beside it as reading {free.Time}"
        );
    }
}
