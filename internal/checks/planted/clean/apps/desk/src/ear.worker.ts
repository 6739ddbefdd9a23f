self.close();
