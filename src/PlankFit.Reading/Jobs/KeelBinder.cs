using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>[keel] and [[keel-layer]]: the keel's layers, from the inside out, and what is judged of them.</summary>
internal static class KeelBinder
{
    public static KeelSpec Bind(
        TableReader? keel,
        ImmutableArray<TableReader> layers,
        LengthUnit units
    )
    {
        keel?.Close();
        return KeelSpec.None;
    }
}
