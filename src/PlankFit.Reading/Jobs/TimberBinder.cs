using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>[timber]: what the planks are made of.</summary>
internal static class TimberBinder
{
    public static TimberSpec? Bind(TableReader? table, LengthUnit units)
    {
        table?.Close();
        return null;
    }
}
