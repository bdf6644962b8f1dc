namespace SheetGen.Cli.Corridors;

/// <summary>Ends a worker when the process that started it is gone: its standard input then ends. What it is writing comes to a clean end first.</summary>
internal static class ParentWatch
{
    public static void Start(Interruption interruption)
    {
        var watch = new Thread(() =>
        {
            try
            {
                while (Console.In.Read() >= 0)
                {
                }
            }
            catch (IOException)
            {
                // A closed stream is an ended one.
            }
            interruption.End();
        })
        { IsBackground = true };
        watch.Start();
    }
}
