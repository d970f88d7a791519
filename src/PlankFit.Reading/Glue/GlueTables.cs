using System.Collections.Immutable;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Glue;

/// <summary>The tables that resin and glue are read from; null for one that the job does not have.</summary>
internal sealed record GlueTables(TableReader? Resin, TableReader? Glue)
{
    public TableReader? Priming { get; init; }

    public TableReader? Weave { get; init; }

    public ImmutableArray<TableReader> Fillets { get; init; } = [];

    public TableReader? Fairing { get; init; }

    public ImmutableArray<TableReader> Fillers { get; init; } = [];

    public TableReader? Crew { get; init; }

    public TableReader? Clock { get; init; }

    /// <summary>Those that go with resin or glue and mean nothing without.</summary>
    public IEnumerable<TableReader> Besides =>
        new[] { Priming, Weave, Fairing, Crew, Clock }
            .OfType<TableReader>()
            .Concat(Fillets)
            .Concat(Fillers);
}
