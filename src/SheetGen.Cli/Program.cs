Console.Error.WriteLine("not built yet"); return 3;
