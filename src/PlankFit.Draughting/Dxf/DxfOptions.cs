namespace PlankFit.Draughting.Dxf;

/// <summary>Which DXF is written, and in which unit.</summary>
public sealed record DxfOptions(DxfVersion Version, DxfUnit Unit)
{
    public static readonly DxfOptions Default = new(DxfVersion.R2000, DxfUnit.Millimetre);

    /// <summary>Drawing units in a millimetre.</summary>
    internal double Scale => Unit == DxfUnit.Inch ? 1 / 25.4 : 1;

    /// <summary>Decimals written: a ten-thousandth of a millimetre, a millionth of an inch.</summary>
    internal int Decimals => Unit == DxfUnit.Inch ? 6 : 4;

    /// <summary>$INSUNITS: 1 inches, 4 millimetres.</summary>
    internal int InsUnits => Unit == DxfUnit.Inch ? 1 : 4;

    /// <summary>$MEASUREMENT: 0 inches, 1 metric.</summary>
    internal int Measurement => Unit == DxfUnit.Inch ? 0 : 1;
}

public enum DxfUnit
{
    Millimetre,
    Inch,
}

public enum DxfVersion
{
    /// <summary>AC1009, for old laser and router controls.</summary>
    R12,

    /// <summary>AC1015.</summary>
    R2000,
}
